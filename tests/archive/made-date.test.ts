import { expect, test } from 'vitest';
import { madeDate } from '../../src/archive/made-date.ts';

test('the date is that of issue unless the environment asks for another', () => {
  expect(madeDate('2026-03-18', undefined)).toBe('2026-03-18');
  expect(madeDate('2026-03-18', '')).toBe('2026-03-18');
  expect(madeDate('2026-03-18', '1767225599')).toBe('2025-12-31');
  expect(madeDate('2026-03-18', '1767225600')).toBe('2026-01-01');
});

test.each(['yesterday', '-1', '1.5', '0', '99999999999'])('SOURCE_DATE_EPOCH=%s is refused', (epoch) => {
  expect(() => madeDate('2026-03-18', epoch)).toThrow('SOURCE_DATE_EPOCH');
});
