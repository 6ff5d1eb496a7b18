import { expect, test } from 'vitest';
import { fractionDigits, padding } from '../../src/components/decimal.ts';
import { columnLayouts, isEmpty, ruledGroups, unitBehind } from '../../src/components/table-layout.ts';
import type { Row, Table } from '../../src/packet/block.ts';

test.each([
  ['1.60', 2],
  ['95', 0],
  ['−5.3', 1],
  ['+0.0075', 4],
  ['100\u2009\u2009000.5', 1],
  ['≤ 30', 0],
  ['41–171', 0],
  ['–', 0],
  ['99.8 % or more', 0],
])('digits behind the point of %s: %i', (number, digits) => expect(fractionDigits(number)).toBe(digits));

test('a number is padded to the longest fraction of its column, point included', () => {
  expect(padding('95', 2)).toBe('.00');
  expect(padding('2.3', 2)).toBe('0');
  expect(padding('2.30', 2)).toBe('');
  expect(padding('7', 0)).toBe('');
  // As printed, every number of a column then has its point at the same distance from the right.
  for (const number of ['70', '95.5', '−130.25']) {
    expect((number + padding(number, 2)).length - (number + padding(number, 2)).indexOf('.')).toBe(3);
  }
});

const rows: Row[] = [
  { cells: [['R'], { number: '1.6' }, { number: '2.30' }, ['mΩ']] },
  { cells: [['k'], { number: '10' }, { number: '–' }, ['V']] },
];
const table: Table = {
  kind: 'table',
  id: 't',
  number: '1.1',
  caption: [],
  columns: [
    { head: ['Symbol'], align: 'left' },
    { head: ['min'], align: 'decimal' },
    { head: ['max'], align: 'decimal' },
    { head: [], align: 'unit' },
  ],
  groups: [{ rows }],
};

test('a column knows its longest fraction and its head', () => {
  const [, min, max] = columnLayouts(table);
  expect(min).toMatchObject({ digits: 1, head: 'min' });
  expect(max).toMatchObject({ digits: 2, head: 'max' });
});

test('the unit goes with the last number before it', () => {
  const columns = columnLayouts(table);
  const units = (row: Row) => columns.map((_, at) => unitBehind(row, columns, at));
  expect(units(rows[0]!)).toEqual([undefined, undefined, 'mΩ', undefined]);
  expect(units(rows[1]!)).toEqual([undefined, 'V', undefined, undefined]);
});

test('dashes and nothing are empty', () => {
  expect(isEmpty([])).toBe(true);
  expect(isEmpty(['–'])).toBe(true);
  expect(isEmpty({ number: '–' })).toBe(true);
  expect(isEmpty({ number: '0' })).toBe(false);
  expect(isEmpty(['–', 'x'])).toBe(false);
});

test('from twenty rows on a hairline follows every fifth row, counted over the groups', () => {
  const group = (count: number) => ({ rows: Array.from({ length: count }, () => ({ cells: [] })) });
  expect(ruledGroups([group(3)])[0]!.ruled).toEqual([true, true, true]);
  const long = ruledGroups([group(3), group(17)]);
  expect(long[0]!.ruled).toEqual([false, false, false]);
  expect(long[1]!.ruled.flatMap((ruled, index) => (ruled ? [index + 4] : []))).toEqual([5, 10, 15, 20]);
});
