import { expect, test } from 'vitest';
import { find } from '../../src/analysis/find.ts';
import { packetFiles } from '../../src/packet/files.ts';
import { packetOf } from '../../src/packet/packet-of.ts';
import { readBench } from '../../src/spec/bench/read-bench.ts';
import { boardFrom } from '../spec/spec-text.ts';
import { divider, packetFrom } from './packets.ts';
import { expectSound } from './sound.ts';
import { chapterNamed, rowsOf, said, tableNamed } from './walk.ts';

const spec = `requirements:
  REQ-1: { says: The pack shall be measured, shown by: sense.full_scale, tested at: sense.tap }
${divider('12 kohm').replace('{ V_in: 36 V }', '{ V_in: 36 V }, uncertainty: 4 mV')}`;

function packetWith(csv: string) {
  const board = boardFrom(spec);
  const { readings } = readBench(csv, 'bench.csv', board);
  const measured = { ...board, bench: readings };
  return packetOf(measured, find(measured, { seed: 1, trials: 2000, digest: 'f'.repeat(64), tool: '1.0.0' }));
}

test('without bench.csv there is no chapter 14; with it every reading stands beside its prediction', () => {
  expect(packetFrom(divider()).chapters.some(({ slug }) => slug === 'bench')).toBe(false);
  const packet = packetWith(
    'point,value,unit,uncertainty,date,sample\nsense.tap,2.670,V,0.004,2026-03-02,007\nsense.tap,2.8,V,0.004,2026-03-03,008\n',
  );
  expectSound(packet);
  const rows = rowsOf(tableNamed(packet, 'bench-readings'));
  expect(rows[0]).toMatch(
    /^B-1 \| sense\.tap \| \$V_\{\\mathrm\{out\}\}\$ \| \$V_\{\\mathrm\{in\}\}\$ = 36 V \| 2\.617 \| 2\.667 \| 2\.717 \| 2\.6700 \| 0\.0040 \| V \| \(strip\) \| \+0\.3 \| \d\d\.\d \| as predicted$/,
  );
  expect(rows[1]).toMatch(/\| outside$/);
  expect(rowsOf(tableNamed(packet, 'bench-record'))[0]).toBe('B-1 | 007 | – | 2026-03-02 | – | – | REQ-1 | 2');
  const [lead] = chapterNamed(packet, 'bench').blocks;
  expect(lead?.kind === 'paragraph' && said(lead.text)).toBe(
    'Of two readings, one lies where predicted. One reading lies outside what the calculation allows: B-2.',
  );
  const summary = chapterNamed(packet, 'summary').blocks.flatMap((block) =>
    block.kind === 'paragraph' ? [said(block.text)] : [],
  );
  expect(summary).toContain('On the bench, B-2 at sense.tap lies outside what was predicted.');
  expect(rowsOf(tableNamed(packet, 'requirements'))[0]).toMatch(
    /sense\.tap \(B-1, B-2\).*\| reopened: B-2 is outside$/,
  );
});

test('the sheets hold what may be accepted, rounded inward, behind a hold point', () => {
  const packet = packetWith('point,value,unit,uncertainty,date\n');
  const [hold, reading] = rowsOf(tableNamed(packet, 'test-points-supply'));
  expect(hold).toMatch(/^Hold 1 \| Supply limited/);
  // 2.617701 + 0.004 = 2.621701, up; 2.716475 − 0.004 = 2.712475, down.
  expect(reading).toContain('| 2.617 | 2.667 | 2.717 | V | 2.622 | 2.712 |');
  const production = rowsOf(tableNamed(packet, 'production-limits'));
  expect(production[2]).toMatch(/^sense\.tap \| .* \| 2\.622 \| 2\.712 \| V \| 0\.0040 \| 12\.3 \| 0\.\d \|/);
});

test('the same stands beside the pages as CSV', () => {
  const board = boardFrom(spec);
  const { readings } = readBench(
    'point,value,unit,uncertainty,date\nsense.tap,2670,mV,4,2026-03-02\n',
    'bench.csv',
    board,
  );
  const measured = { ...board, bench: readings };
  const findings = find(measured, { seed: 1, trials: 500, digest: 'f'.repeat(64), tool: '1.0.0' });
  const files = packetFiles(measured, findings);
  const [head, line] = files['bench-results.csv']!.split('\r\n').map((row) => row.split(','));
  const cell = (name: string): string => line![head!.indexOf(name)]!;
  expect([cell('no'), cell('point'), cell('stimulus'), cell('unit'), cell('verdict'), cell('requirements')]).toEqual([
    'B-1',
    'sense.tap',
    'V_in = 36 V',
    'V',
    'as predicted',
    'REQ-1',
  ]);
  expect(Number(cell('measured'))).toBeCloseTo(2.67, 12);
  expect(files['test-points.csv']).toContain('sense.tap,supply,sense.V_out,V_in = 36 V,');
  expect(files['requirements.csv']).toContain(
    'REQ-1,The pack shall be measured,analysis test,sense.full_scale,sense.tap,B-1,',
  );
});
