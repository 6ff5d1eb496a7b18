import { describe, expect, test } from 'vitest';
import type { Caution } from '../../src/packet/block.ts';
import { packetOf } from '../../src/packet/packet-of.ts';
import { divider, packetFrom, reviewed } from './packets.ts';
import { expectSound } from './sound.ts';
import { blocksOf, chapterNamed, equationNamed, rowsOf, said, sectionNamed, tableNamed } from './walk.ts';

const paragraphs = (chapter: ReturnType<typeof chapterNamed>): string[] =>
  [...chapter.blocks, ...chapter.sections.flatMap(({ blocks }) => blocks)].flatMap((block) =>
    block.kind === 'paragraph' ? [said(block.text)] : [],
  );

describe('requirements', () => {
  const packet = packetFrom(
    divider(
      '12 kohm',
      `requirements:
  REQ-1: { says: The pack voltage shall be read, shown by: sense.full_scale }
  REQ-2: { says: The cover shall be guarded, method: I }
`,
    ),
  );
  test('take the worst verdict of what shows them, and say what is still open', () => {
    expect(rowsOf(tableNamed(packet, 'requirements'))).toEqual([
      'REQ-1 | The pack voltage shall be read | A | $V_{\\mathrm{out}} \\le V_{\\mathrm{fs}}$ in the worst case | sense.full_scale | 3.9 | <marginal> | closed',
      'REQ-2 | The cover shall be guarded | I | – | no check shows it | – | – | open: no record of the inspection',
    ]);
  });
  test('orphans are named both ways', () => {
    expect(paragraphs(chapterNamed(packet, 'summary'))).toContain(
      'Nothing shows REQ-2. No requirement asks for one check: sense.floor.',
    );
  });
  test('are named at the check that shows them', () => {
    expect(rowsOf(tableNamed(packet, 'checks-sense'))[0]).toContain('the converter clips above it (REQ-1)');
    expectSound(packet);
  });
});

test('open actions say who, when, and whether they block the release', () => {
  const packet = packetFrom(
    divider(
      '12 kohm',
      'actions: { A-1: { says: Measure it, who: Tester, due: 2026-04-10, blocks release: yes }, A-2: { says: Ask the maker } }\n',
    ),
  );
  expect(rowsOf(tableNamed(packet, 'actions'))).toEqual([
    'A-1 | Measure it | – | Tester | 2026-04-10 | yes',
    'A-2 | Ask the maker | – | – | – | no',
  ]);
  const [statement] = chapterNamed(packet, 'cover').blocks;
  expect(statement?.kind === 'statement' && statement.facts.at(-1)).toMatchObject({
    figure: '2',
    text: ['A-1 blocks release'],
  });
  expectSound(packet);
});

describe('a deviation', () => {
  const packet = packetFrom(
    divider(
      '12.7 kohm',
      'deviations: [{ check: sense.full_scale, reason: the pack is never charged full, approved: 2026-03-01 }]\n',
    ),
  );
  test('carries its check, with the shortfall worked out', () => {
    expect(packet.verdict).toBe('pass');
    expect(rowsOf(tableNamed(packet, 'deviations'))[0]).toMatch(
      /^D-1 \| sense\.full_scale \| −39\.4 mV \| −1\.2 \| .* \| The pack is never charged full\. \| 2026-03-01 \| – \| <accepted D-1> \| /,
    );
    expect(sectionNamed(packet, 'sense').mark).toMatchObject({ verdict: 'accepted', deviation: 'D-1' });
  });
  test('does not hide the thinnest margin that holds', () => {
    expect(packet.thinnest?.check).toBe('sense.floor');
    expectSound(packet);
  });
  test('that is not needed any more is said to be so', () => {
    const mended = packetFrom(
      divider(
        '10 kohm',
        'deviations: [{ check: sense.full_scale, reason: once it was needed, approved: 2026-03-01 }]\n',
      ),
    );
    expect(paragraphs(chapterNamed(mended, 'decisions'))).toEqual([
      'D-1 is not needed any more: what it carries is not a shortfall now.',
    ]);
    expect(rowsOf(tableNamed(mended, 'deviations'))[0]).toContain('| none |');
    expectSound(mended);
  });
});

test('what changed names cautions that came, went or moved, and deviations opened and closed', () => {
  const caution = (id: string, level: 'warning' | 'caution') => ({ id, level, because: {}, unit: '1' });
  const carried =
    'deviations: [{ check: sense.full_scale, reason: the pack is never charged full, approved: 2026-03-01 }]\n';
  const before = reviewed(divider());
  const after = reviewed(`${carried}${divider()}`);
  const packet = packetOf(
    after.board,
    { ...after.findings, cautions: [caution('S05', 'warning'), caution('S09', 'warning')] },
    {
      previous: {
        ...before,
        findings: { ...before.findings, cautions: [caution('S05', 'caution'), caution('S07', 'caution')] },
      },
    },
  );
  const section = chapterNamed(packet, 'changes').sections.find(({ id }) => id === 'changes-cautions')!;
  const lines = section.blocks.flatMap((block) => (block.kind === 'paragraph' ? [said(block.text)] : []));
  expect(lines).toEqual([
    'New: warning S09.',
    'No longer called for: caution S07.',
    'warning S05, was caution.',
    'Deviation D-1 is new: sense.full_scale.',
  ]);
});

describe('what changed', () => {
  const before = reviewed(divider());
  const { board, findings } = reviewed(
    divider(
      '10 kohm',
      `  drain:
    given: { I_lim: 1 mA, R: 150 kohm }
    equations: { I: { is: V_pack / R, unit: A, says: Drain } }
    checks: { little: { holds: I <= I_lim, because: the pack is small } }
`,
    ),
  );
  const packet = packetOf(board, findings, { previous: before });
  const chapter = chapterNamed(packet, 'changes');
  test('opens with both verdicts and what was mended', () => {
    expect(chapter.title).toBe('What changed since revision A');
    expect(paragraphs(chapter)[0]).toBe(
      'Revision A was <fail>; this one is <pass>. Three inputs changed, came or went. One check that did not hold does now: sense.full_scale. Nothing that held has stopped holding. What was signed and tested under revision A and no longer counts stands in 5.6. A bar in the left margin marks these lines throughout.',
    );
  });
  // 3.3/4096 · 162.7/12.7 = 0.0103214 V before, 3.3/4096 · 160/10 = 0.0128906 V now.
  test('lists firmware constants, and what is to be signed, tested and built again', () => {
    expect(rowsOf(tableNamed(packet, 'changed-constants'))).toEqual([
      'V_PER_COUNT | 0.0103214 V | 0.0128906 V | +24.9 | –',
    ]);
    expect(
      paragraphs({ ...chapter, blocks: [], sections: chapter.sections.filter(({ id }) => id === 'changes-again') }),
    ).toEqual([
      'Sign again. Signatures under revision A do not cover 7.1, 7.2, 7.3.',
      'Test again. sense.tap.',
      'Build again. Firmware with constants.h of this revision; its constants that differ stand in 5.5.',
    ]);
  });
  test('shows inputs, verdicts and results before and now; a new circuit in one line', () => {
    expect(rowsOf(tableNamed(packet, 'changed-inputs'))).toEqual([
      'sense.R_bot, 7.1 | R2 | – | 12.7 kΩ ±1 % (typical) | 10 kΩ ±1 % (typical)',
    ]);
    expect(paragraphs(chapter)).toContain('Circuits: drain (new: 7.2 drain).');
    expect(rowsOf(tableNamed(packet, 'changed-checks'))[0]).toMatch(
      /^sense\.full_scale \| −1\.2 \| <fail> \| 18\.9 \| <pass> \| \+20\.1 \| /,
    );
    expect(rowsOf(tableNamed(packet, 'changed-results'))[0]).toMatch(
      /^sense\.V_out, 7\.1 \| Voltage at the converter \| 2\.298 to 3\.340 V \| 1\.840 to 2\.675 V \| −19\.9$/,
    );
  });
  test('carries bars elsewhere', () => {
    expect(equationNamed(packet, 'sense.V_out').changed).toBe(true);
    const changed = tableNamed(packet, 'inputs-sense')
      .groups.flatMap(({ rows }) => rows)
      .filter((row) => row.changed);
    expect(changed.map(({ id }) => id)).toEqual(['sense.R_bot']);
    expectSound(packet);
  });
  test('says when nothing did', () => {
    const same = packetOf(before.board, before.findings, { previous: before });
    expect(paragraphs(chapterNamed(same, 'changes'))).toEqual([
      'Nothing differs from revision A in what was given or found.',
    ]);
    expectSound(same);
  });
});

describe('what could not be judged', () => {
  test('equations used outside their range are in doubt wherever they are read first', () => {
    const packet = packetFrom(
      divider('12 kohm', '    valid: { small: { holds: V_in <= 40 V, because: above it the pin conducts } }\n'),
    );
    const [lead] = sectionNamed(packet, 'sense').blocks;
    expect(lead?.kind === 'paragraph' && said(lead.text)).toMatch(
      /Its equations do not hold everywhere: see sense\.small\.$/,
    );
    expect(paragraphs(chapterNamed(packet, 'summary'))[0]).toMatch(
      /^Equations are used outside the range in which they hold: sense\.small\./,
    );
    expectSound(packet);
  });
  test('a limit of zero has no margin, only a slack', () => {
    const packet = packetFrom(
      'circuits: { x: { given: { a: 1 V ±1 %, b: 2 V }, equations: { d: { is: b - a, unit: V, says: Rest } }, checks: { some: { holds: d >= 0 V, because: test } } } }\n',
    );
    expect(packet.thinnest).toEqual({ margin: '990\u00a0mV', check: 'x.some' });
    expectSound(packet);
  });
  test('a check that is undefined somewhere is not assessed, and no yield is printed', () => {
    const packet = packetFrom(
      'circuits: { x: { given: { a: 1 to 3 typ 2.5 }, equations: { y: { is: "sqrt(a - 2)", unit: 1, says: Root } }, checks: { some: { holds: y >= 0.5, because: test } } } }\n',
    );
    expect(packet.verdict).toBe('not assessed');
    expect(packet.yield).toBeUndefined();
    expect(rowsOf(tableNamed(packet, 'margin-table'))[0]).toBe('Not assessed: 1 check');
    expectSound(packet);
  });
});

test('named cases narrow the worst case, and the case is named where it does', () => {
  const packet = packetFrom(
    divider('10 kohm').replace('margins:', 'cases: { parked: { V_pack: 30 V to 36 V typ 33 V } }\nmargins:'),
  );
  expect(rowsOf(tableNamed(packet, 'cases'))).toEqual(['parked | 30 to 36 V, typ 33 | full range']);
  expect(equationNamed(packet, 'sense.V_out').notes.map(said)[1]).toMatch(
    /^Highest at \$V_\{\\mathrm\{pack\}\}\$ = 36 V; case parked;/,
  );
  expectSound(packet);
});

describe('safety cautions', () => {
  const caution = (id: string, level: Caution['level']): Caution => ({
    kind: 'caution',
    id,
    level,
    hazard: `Hazard ${id}`,
    text: ['It hurts.'],
    precaution: ['Keep away.'],
    raisedBy: ['3 J'],
    source: ['7.1'],
    reminder: ['L1'],
  });
  const { board, findings } = reviewed(divider());
  const packet = packetOf(board, findings, { cautions: [caution('S2', 'notice'), caution('S1', 'danger')] });
  test('stand gravest first, and on the cover', () => {
    const ids = chapterNamed(packet, 'cautions').blocks.flatMap((block) =>
      block.kind === 'caution' ? [block.id] : [],
    );
    expect(ids).toEqual(['S1', 'S2']);
    const banner = chapterNamed(packet, 'cover').blocks.find((block) => block.kind === 'banner');
    expect(banner).toMatchObject({ level: 'danger', counts: ['1 danger', '1 notice'] });
    expect(packet.counts?.cautions).toBe('1 danger, 1 notice');
    expect(blocksOf(packet).filter((block) => block.kind === 'caution')).toHaveLength(2);
    expectSound(packet);
  });
});
