import { describe, expect, test } from 'vitest';
import { methodCases, notCovered, printedRange } from './cases.ts';
import { work } from './work.ts';

const rows = methodCases();

describe('methods of the handbook against figures published elsewhere', () => {
  test.each(rows)('$id, $title ($source)', ({ method, given, gives }) => {
    const value = work(method, given);
    for (const [symbol, printed] of Object.entries(gives)) {
      const { min, max } = printedRange(printed);
      const room = 1e-12 * Math.max(Math.abs(min), Math.abs(max));
      expect(value(symbol), `${symbol}, printed ${printed}`).toBeGreaterThanOrEqual(min - room);
      expect(value(symbol), `${symbol}, printed ${printed}`).toBeLessThanOrEqual(max + room);
    }
  });
});

test('a published case is either held against a method or left out with a reason', () => {
  const held = new Set(rows.map(({ id }) => id));
  expect(held.size).toBeGreaterThanOrEqual(60);
  for (const [id, reason] of Object.entries(notCovered())) {
    expect(held, id).not.toContain(id);
    expect(reason.length, id).toBeGreaterThan(20);
  }
});
