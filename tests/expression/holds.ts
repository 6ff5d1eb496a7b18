import { expect } from 'vitest';
import type { Interval } from '../../src/expression/interval.ts';

/** Fails with both when `value` lies outside `range`, or the range is none. */
export function expectHeld(range: Interval, value: number): void {
  if (range.lo <= value && value <= range.hi) return;
  expect({ value, lo: range.lo, hi: range.hi }).toBe('a range that holds the value');
}

/** Fails when a range is empty or not a number. */
export function expectSound(range: Interval): void {
  if (range.lo <= range.hi && range.lo < Infinity && range.hi > -Infinity) return;
  expect(range).toBe('a range');
}
