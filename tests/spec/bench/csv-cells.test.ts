import { describe, expect, test } from 'vitest';
import { csvRecords } from '../../../src/spec/bench/csv-cells.ts';

const texts = (text: string): string[][] => csvRecords(text).records.map((one) => one.map((cell) => cell.text));

describe('CSV is read as RFC 4180 says', () => {
  test.each([
    [
      'a,b\n1,2\n',
      [
        ['a', 'b'],
        ['1', '2'],
      ],
    ],
    [
      'a,b\r\n1,2\r\n',
      [
        ['a', 'b'],
        ['1', '2'],
      ],
    ],
    ['\ufeffa,b', [['a', 'b']]],
    ['a,"x, ""y""\nz"\n', [['a', 'x, "y"\nz']]],
    [
      'a,,\n\n , b ,\n',
      [
        ['a', '', ''],
        ['', 'b', ''],
      ],
    ],
    ['', []],
  ])('%j', (text, expected) => {
    expect(texts(text)).toEqual(expected);
  });
  test('every cell knows where it stands', () => {
    const text = 'a, "b c" ,d\n';
    const cells = csvRecords(text).records[0]!;
    expect(cells.map(({ start, end }) => text.slice(start, end))).toEqual(['a', '"b c"', 'd']);
  });
  test.each([
    ['a,"b', 2, 'a quote that is never closed'],
    ['a,b"c', 3, 'a quote inside a cell that is not quoted'],
    ['a,"b"c,d', 5, 'text behind a closing quote'],
  ])('%j is refused at its place', (text, start, found) => {
    expect(csvRecords(text).faults).toEqual([expect.objectContaining({ start, found })]);
  });
});
