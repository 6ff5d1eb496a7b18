import { describe, expect, test } from 'vitest';
import { readBench } from '../../../src/spec/bench/read-bench.ts';
import { showProblems } from '../../../src/spec/problem.ts';
import { divider } from '../../packet/packets.ts';
import { boardFrom } from '../spec-text.ts';

const board = boardFrom(divider('12 kohm'));
const head = 'point,value,unit,uncertainty,date,at,sample,instrument,by,remark\n';
const read = (rows: string, first = head) => readBench(first + rows, 'bench.csv', board);
const messages = (rows: string, first = head): string => showProblems(read(rows, first).problems);

describe('a line of bench.csv', () => {
  test('is a reading in SI units, with its place', () => {
    const { readings, problems } = read(
      'sense.tap,2666,mV,0.5 %,2026-03-02,T_amb = 22 degC,007,"meter, 6½ digits",Test engineer,warm\n',
    );
    expect(problems).toEqual([]);
    expect(readings).toEqual([
      expect.objectContaining({
        id: 'B-1',
        line: 2,
        point: 'sense.tap',
        reads: 'sense.V_out',
        value: 2.666,
        sample: '007',
        instrument: 'meter, 6½ digits',
        by: 'Test engineer',
        remark: 'warm',
      }),
    ]);
    expect(readings[0]!.uncertainty).toBeCloseTo(0.01333, 9);
    expect(readings[0]!.when.get('T_amb')!.typ).toBeCloseTo(295.15, 9);
  });
  test('may read a result at stated conditions, and leave the last cells out', () => {
    const { readings } = read('sense.P_top,7.1,mW,0.1,2026-03-02,V_in = 35.9 V\n');
    expect(readings[0]).toMatchObject({ reads: 'sense.P_top', uncertainty: 1e-4 });
    expect(readings[0]).not.toHaveProperty('point');
  });
  test('columns may stand in any order', () => {
    const { readings } = read('2026-03-02,V,sense.tap,0.01,2.66\n', 'date,unit,point,uncertainty,value\n');
    expect(readings[0]).toMatchObject({ value: 2.66, date: '2026-03-02' });
  });
});

describe('what cannot be read is shown with line and column', () => {
  const good = { point: 'sense.tap', value: '2.66', unit: 'V', uncertainty: '0.01', date: '2026-03-02', at: '' };
  const line = (changes: Partial<typeof good>): string => `${Object.values({ ...good, ...changes }).join(',')}\n`;
  test.each([
    [
      'a point that nobody has',
      { point: 'sense.tpa' },
      /bench\.csv:2:1 {2}unknown-point[\s\S]*Did you mean sense\.tap|`sense\.tap`/,
    ],
    ['a number with a decimal comma', { value: '"2,66"' }, /bench\.csv:2:11 {2}not-a-number[\s\S]*decimal point/],
    ['a unit of another dimension', { unit: 'A' }, /bench\.csv:2:16 {2}wrong-unit[\s\S]*current[\s\S]*voltage/],
    ['no unit at all', { unit: '' }, /missing-value[\s\S]*its unit/],
    ['an unknown unit', { unit: 'Vlt' }, /bench\.csv:2:16 {2}unknown-unit/],
    ['a negative uncertainty', { uncertainty: '-1' }, /bench\.csv:2:18 {2}not-an-uncertainty/],
    ['a day that is none', { date: '2026-02-30' }, /bench\.csv:2:23 {2}not-a-date/],
    ['a condition that is none', { at: 'V_inn = 3 V' }, /bench\.csv:2:34 {2}unknown-name[\s\S]*V_in/],
    ['a condition of another dimension', { at: 'V_in = 3 A' }, /bench\.csv:2:34 {2}wrong-unit/],
    ['a condition without a value', { at: 'V_in' }, /bench\.csv:2:34 {2}not-a-condition/],
  ])('%s', (_, changes, message) => {
    expect(messages(line(changes))).toMatch(message);
    expect(read(line(changes)).readings).toEqual([]);
  });
  test('a missing, an unknown and a doubled column', () => {
    expect(messages('', 'point,value,unit,date\n')).toMatch(/bench\.csv:1:1 {2}missing-column[\s\S]*`uncertainty`/);
    expect(messages('', head.replace('remark', 'remrk'))).toMatch(
      /bench\.csv:1:59 {2}unknown-column[\s\S]*Did you mean `remark`/,
    );
    expect(messages('', head.replace('remark', 'unit'))).toMatch(/bench\.csv:1:59 {2}column-twice/);
  });
  test('more cells than columns, and a broken quote', () => {
    expect(messages(`${line({}).trim()},,,,,,\n`)).toMatch(/bench\.csv:2:\d+ {2}csv-columns[\s\S]*double quotes/);
    expect(messages('sense.tap,"2.66,V\n')).toMatch(/bench\.csv:2:11 {2}csv-syntax/);
  });
  test('an empty file', () => {
    expect(messages('', '')).toMatch(/bench\.csv:1:1 {2}unknown-column/);
  });
  test('all problems at once', () => {
    expect(read(line({ date: 'x' }) + line({ point: 'y' })).problems).toHaveLength(2);
  });
});
