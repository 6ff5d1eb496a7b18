import { describe, expect, test } from 'vitest';
import { packetOf } from '../../src/packet/packet-of.ts';
import { divider, packetFrom, reviewed } from './packets.ts';
import { expectSound } from './sound.ts';
import {
  blocksOf,
  chapterNamed,
  equationNamed,
  equationText,
  rowsOf,
  said,
  sectionNamed,
  tableNamed,
  tablesOf,
} from './walk.ts';

const slugs = (packet: ReturnType<typeof packetFrom>): string[] => packet.chapters.map(({ slug }) => slug);
const failing = packetFrom(divider());

describe('a packet as a whole', () => {
  test('says who it is and what was decided, before any markup', () => {
    expect(failing).toMatchObject({
      board: 'lift-table',
      revision: 'rev-a',
      document: 'LT-7',
      revisionMark: 'A',
      verdict: 'fail',
      thinnest: { margin: '−1.2\u00a0%', check: 'sense.full_scale' },
      counts: { checks: '2 checks: 1 fail, 1 pass' },
      foot: {
        status: 'Draft. Uncontrolled when printed.',
        origin: 'inputs 0123 4567 89ab · Copperplate 1.0.0 · seed 1',
      },
    });
  });
  test('leaves out chapters with nothing to say, keeps the numbers of the others, and says so', () => {
    expect(failing.chapters.map(({ number }) => number)).toEqual([1, 2, 3, 6, 7, 8, 9, 10, 11, 12, 13, 16, 17]);
    const note = blocksOf({ ...failing, chapters: [chapterNamed(failing, 'contents')] }).find(
      (block) => block.kind === 'paragraph',
    );
    expect(note?.kind === 'paragraph' && said(note.text)).toBe(
      'Left out, as this board gives them nothing to say: 4 Safety cautions; 5 What changed; 14 Bench results against prediction; 15 Decisions, deviations, review record.',
    );
  });
  test('is the same each time', () => {
    expect(packetFrom(divider())).toEqual(failing);
  });
  test('refuses findings of another board', () => {
    const { board, findings } = reviewed(divider());
    expect(() => packetOf({ ...board, revision: 'rev-b' }, findings)).toThrow(
      'The findings are of lift-table/rev-a, the board is lift-table/rev-b.',
    );
  });
  test('is sound', () => {
    expectSound(failing);
  });
  test('of a board with no circuit is a cover, contents, summary and colophon', () => {
    const empty = packetFrom('');
    expect(slugs(empty)).toEqual(['cover', 'contents', 'summary', 'colophon']);
    expectSound(empty);
  });
});

describe('an equation', () => {
  // By hand: 36 · 12.7/162.7 = 2.8101; at worst 42 · 12.827/(148.5 + 12.827) = 3.33939, rounded up.
  test('stands as symbols, with typical numbers, and with those of the corner that hurts', () => {
    expect(equationText(equationNamed(failing, 'sense.V_out'))).toEqual([
      'symbols: V_{\\mathrm{out}} = \\frac{V_{\\mathrm{in}} \\, R_{\\mathrm{bot}}}{R_{\\mathrm{top}} + R_{\\mathrm{bot}}}',
      'typical: V_{\\mathrm{out}} = \\frac{36\\,\\mathrm{V} \\cdot 12.7\\,\\mathrm{k\\Omega}}{150\\,\\mathrm{k\\Omega} + 12.7\\,\\mathrm{k\\Omega}} = 2.810 V',
      'worst: V_{\\mathrm{out}} = \\frac{42\\,\\mathrm{V} \\cdot 12.83\\,\\mathrm{k\\Omega}}{148.5\\,\\mathrm{k\\Omega} + 12.83\\,\\mathrm{k\\Omega}} = 3.340 V',
    ]);
  });
  test('says where its worst case lies, how it was closed, who says so and what uses it', () => {
    const notes = equationNamed(failing, 'sense.V_out').notes.map(said);
    expect(notes).toEqual([
      "Ohm's law.",
      'Highest at $V_{\\mathrm{pack}}$ = 42 V; high: $R_{\\mathrm{bot}}$; low: $R_{\\mathrm{top}}$. Proven: nothing in between goes further.',
      'Used in (7.2), sense.full_scale, sense.floor.'.replaceAll('sense.', ''),
    ]);
  });
  test('is drawn on a scale with both of its limits, the thinner one with its target', () => {
    const { strip } = equationNamed(failing, 'sense.V_out');
    expect(strip?.limits).toEqual([
      { at: 3.3, forbidden: 'above' },
      { at: 1, forbidden: 'below' },
    ]);
    expect(strip?.target).toBeCloseTo(2.97, 12);
    expect(strip?.labels.map(({ text, worst }) => [text, worst])).toEqual([
      ['2.298\u00a0V', false],
      ['3.340\u00a0V', true],
    ]);
  });
  test('limited from below is shown at its lowest', () => {
    const low = packetFrom(
      divider().replace('V_out <= V_fs', 'V_out <= 100 V').replace('V_out >= 1 V', 'V_out >= 2.2 V'),
    );
    const [, , worst] = equationText(equationNamed(low, 'sense.V_out'));
    // 30 · 12.573/(151.5 + 12.573) = 2.29892, rounded down.
    expect(worst).toMatch(/^worst: .*30\\,\\mathrm\{V\}.*= 2\.298 V$/);
  });
  test('that nothing moves has no worst line', () => {
    const fixed = packetFrom(
      'circuits: { x: { given: { a: 2 V }, equations: { b: { is: 2 * a, unit: V, says: Twice } } } }\n',
    );
    expect(equationNamed(fixed, 'x.b').lines.map(({ label }) => label)).toEqual(['symbols', 'typical']);
    expect(equationNamed(fixed, 'x.b').notes.map(said)).toEqual(['The same on every board.']);
  });
});

describe('the section of a circuit', () => {
  test('opens with its verdict and the number that decides', () => {
    const [lead] = sectionNamed(failing, 'sense').blocks;
    expect(lead?.kind === 'paragraph' && said(lead.text)).toBe(
      'One of two checks fails. The other holds with the margin asked for. The thinnest is sense.full_scale. At worst $V_{\\mathrm{out}}$ reaches 3.340 V where at most 3.3 V is allowed, a margin of −1.2 %.',
    );
    expect(sectionNamed(failing, 'sense').mark).toEqual({ verdict: 'fail', margin: '−1.2\u00a0%' });
  });
  test('lists what goes in by what it is, with origin and use', () => {
    expect(rowsOf(tableNamed(failing, 'inputs-sense'))).toEqual([
      'From elsewhere on the board',
      '$V_{\\mathrm{in}}$ | – | – | 30 | 36 | 42 | V | follows | – | V_pack, 6.1 | (7.1), (7.2), sense.tap'.replace(
        ', sense.tap',
        '',
      ),
      'Parts',
      '$R_{\\mathrm{top}}$ | R1 | – | 148.5 | 150.0 | 151.5 | kΩ | ±1 % | guaranteed | data sheet, p. 3 | (7.1), (7.2), sense.V_PER_COUNT',
      '$R_{\\mathrm{bot}}$ | R2 | – | 12.57 | 12.70 | 12.83 | kΩ | ±1 % | typical | the specification | (7.1), sense.V_PER_COUNT',
      'Fixed values',
      '$V_{\\mathrm{fs}}$ | – | – | – | 3.3 | – | V | exact | – | the specification | sense.V_PER_COUNT, full_scale',
    ]);
  });
  test('judges each check with slack, margin and boards, rounded toward failure', () => {
    const [fullScale, floor] = rowsOf(tableNamed(failing, 'checks-sense'));
    // 3.3 − 3.33939 = −0.03939; over 3.3 it is −1.194 %.
    expect(fullScale).toMatch(
      /^full_scale \| \$V_\{\\mathrm\{out\}\} \\le V_\{\\mathrm\{fs\}\}\$ \| the converter clips above it \| −39\.4 \| mV \| −1\.2 \| .* \| <fail>$/,
    );
    expect(floor).toMatch(/ \| 1\.29 \| V \| 129\.8 \| ≤ 1497 ppm \| <pass>$/);
  });
});

test('the margin table ranks the checks, with the left side at its worst and the corner in arrows', () => {
  expect(rowsOf(tableNamed(failing, 'margin-table'))).toEqual([
    'FAIL: 1 check does not hold',
    '1 | sense.full_scale | $V_{\\mathrm{out}} \\le V_{\\mathrm{fs}}$ | 3.340 | V | V↑ | · | · | −1.2 | (strip) | <fail> | [check-sense.full_scale]',
    'Pass: 1 check',
    '2 | sense.floor | $V_{\\mathrm{out}} \\ge 1\\,\\mathrm{V}$ | 2.298 | V | V↓ | · | · | 129.8 | (strip) | <pass> | [check-sense.floor]',
  ]);
});

test('parts, test points and constants stand where buyer, tester and firmware look for them', () => {
  const [, top] = rowsOf(tableNamed(failing, 'parts-list'));
  expect(top).toMatch(/^R1 \| \$R_\{\\mathrm\{top\}\}\$ \| .* \| 150 kΩ ±1 % \| /);
  // 36 V · 12.573/(151.5 + 12.573) = 2.7587, 36 V · 12.827/(148.5 + 12.827) = 2.8623.
  expect(rowsOf(tableNamed(failing, 'test-points-supply'))[1]).toBe(
    'sense.tap | Voltage at the converter | $V_{\\mathrm{in}}$ = 36 V | 2.758 | 2.810 | 2.863 | V | – | – |  |  | sense.V_out, 7.1',
  );
  // 3.3/4096 · 162.7/12.7 = 0.0103214 V.
  expect(rowsOf(tableNamed(failing, 'firmware-constants'))[0]).toMatch(/\| 0\.0103214 \|/);
});

describe('heat', () => {
  test('is added up, largest first', () => {
    expect(rowsOf(tableNamed(failing, 'heat-losses')).map((row) => row.split(' | ')[0])).toEqual([
      'sense.P_top, 7.1',
      'board.heat, 7.2',
    ]);
  });
  test('a board without heat has no such chapter', () => {
    expect(slugs(packetFrom(divider().replace(', heat: true', '')))).not.toContain('heat');
  });
});

describe('histograms', () => {
  const [figure] = blocksOf(failing).filter((block) => block.kind === 'figure');
  test('show what is limited, with the limit on its side, and every board once', () => {
    const plot = figure!.plot;
    if (plot.kind !== 'histogram') throw new Error('not a histogram');
    expect(plot.title).toBe('Voltage at the converter, V');
    expect(plot.limits).toEqual([{ at: 3.3, forbidden: 'above', label: 'limit 3.3\u00a0V' }]);
    expect(plot.counts.reduce((a, b) => a + b)).toBe(2000);
    expect(plot.edges).toEqual(plot.edges.toSorted((a, b) => a - b));
    expect(plot.quantiles.map(({ label }) => label)).toEqual(['0.135\u00a0%', 'median', '99.865\u00a0%']);
    expect(plot.quantiles.map(({ at }) => at)).toEqual(plot.quantiles.map(({ at }) => at).toSorted((a, b) => a - b));
    expect(plot.worst).toEqual([{ at: expect.closeTo(3.33939, 4), label: 'worst 3.340' }]);
  });
  test('show the slack where the limit varies from board to board', () => {
    const joint = packetFrom(divider().replace('V_fs: 3.3 V', 'V_fs: 3.2 / 3.3 / 3.4 V'));
    const plots = blocksOf(joint).flatMap((block) =>
      block.kind === 'figure' && block.plot.kind === 'histogram' ? [block.plot] : [],
    );
    expect(plots[0]).toMatchObject({
      title: expect.stringMatching(/^Slack, /),
      limits: [{ at: 0, forbidden: 'below', label: 'no slack left' }],
    });
  });
});

test('every table is captioned and has rows', () => {
  for (const { id, caption, groups } of tablesOf(failing)) {
    expect([id, said(caption).length > 20, groups.flatMap(({ rows }) => rows).length > 0]).toEqual([id, true, true]);
  }
});
