import type { Interval } from './interval.ts';
import { addDown, addUp, divideDown, divideUp, multiplyDown, multiplyUp } from './rounding.ts';

/**
 * Interval arithmetic that the operations are made of. Results are rounded outward and hold no NaN.
 * Where nothing can be said, the whole line with `certain: false`.
 */
export const WHOLE: Interval = { lo: -Infinity, hi: Infinity, certain: false };
export const ZERO: Interval = { lo: 0, hi: 0, certain: true };
export const ONE: Interval = { lo: 1, hi: 1, certain: true };
export const MINUS_ONE: Interval = { lo: -1, hi: -1, certain: true };
/** A truth that is not settled: 0 or 1. Also the slope at a kink from flat to 1. */
export const UNSETTLED: Interval = { lo: 0, hi: 1, certain: true };
export const RISING: Interval = { lo: 0, hi: Infinity, certain: true };
export const FALLING: Interval = { lo: -Infinity, hi: 0, certain: true };

/** @example range(4.9, 5.1) // { lo: 4.9, hi: 5.1, certain: true } */
export function range(lo: number, hi: number, certain = true): Interval {
  return { lo, hi, certain };
}

/** The range that holds one number only; the whole line, uncertain, for NaN. */
export function point(x: number): Interval {
  return Number.isNaN(x) ? WHOLE : { lo: x, hi: x, certain: true };
}

export const holdsZero = (x: Interval): boolean => x.lo <= 0 && x.hi >= 0;

/** Smallest range that holds both. */
export function hull(a: Interval, b: Interval): Interval {
  return { lo: Math.min(a.lo, b.lo), hi: Math.max(a.hi, b.hi), certain: a.certain && b.certain };
}

/** What both hold; `a` itself where they have nothing in common, which only rounding can bring about. */
export function meet(a: Interval, lo: number, hi: number): Interval {
  const low = Math.max(a.lo, lo);
  const high = Math.min(a.hi, hi);
  return low <= high ? { lo: low, hi: high, certain: a.certain } : a;
}

/** Every number of `a` moved into `lo … hi`. */
export function clampRange(a: Interval, lo: number, hi: number): Interval {
  return { lo: Math.min(Math.max(a.lo, lo), hi), hi: Math.max(Math.min(a.hi, hi), lo), certain: a.certain };
}

export function addRanges(a: Interval, b: Interval): Interval {
  return { lo: addDown(a.lo, b.lo), hi: addUp(a.hi, b.hi), certain: a.certain && b.certain };
}

export function subtractRanges(a: Interval, b: Interval): Interval {
  return { lo: addDown(a.lo, -b.hi), hi: addUp(a.hi, -b.lo), certain: a.certain && b.certain };
}

export function negateRange(a: Interval): Interval {
  return { lo: -a.hi, hi: -a.lo, certain: a.certain };
}

export function multiplyRanges(a: Interval, b: Interval): Interval {
  return {
    lo: productLow(a.lo, a.hi, b.lo, b.hi),
    hi: productHigh(a.lo, a.hi, b.lo, b.hi),
    certain: a.certain && b.certain,
  };
}

/** The least product of numbers in `aLo … aHi` and `bLo … bHi`. */
export function productLow(aLo: number, aHi: number, bLo: number, bHi: number): number {
  if (aLo >= 0) return multiplyDown(bLo >= 0 ? aLo : aHi, bLo);
  if (bLo >= 0) return multiplyDown(bHi, aLo);
  if (aHi <= 0) return bHi > 0 ? multiplyDown(aLo, bHi) : multiplyDown(aHi, bHi);
  if (bHi <= 0) return multiplyDown(aHi, bLo);
  return Math.min(multiplyDown(aLo, bHi), multiplyDown(aHi, bLo));
}

/** The greatest product of numbers in `aLo … aHi` and `bLo … bHi`. */
export function productHigh(aLo: number, aHi: number, bLo: number, bHi: number): number {
  if (aLo >= 0) return multiplyUp(bHi >= 0 ? aHi : aLo, bHi);
  if (bLo >= 0) return multiplyUp(aHi >= 0 ? bHi : bLo, aHi);
  if (aHi <= 0 || bHi <= 0) return multiplyUp(aLo, bLo);
  return Math.max(multiplyUp(aLo, bLo), multiplyUp(aHi, bHi));
}

/** Quotient; a divisor that can be zero gives a half line or the whole line, and `certain: false`. */
export function divideRanges(a: Interval, b: Interval): Interval {
  if (b.lo > 0) return quotientByPositive(a, b.lo, b.hi, a.certain && b.certain);
  if (b.hi < 0) return quotientByPositive(negateRange(a), -b.hi, -b.lo, a.certain && b.certain);
  if (b.lo === 0 && b.hi > 0) return quotientByPositive(a, 0, b.hi, false);
  if (b.hi === 0 && b.lo < 0) return quotientByPositive(negateRange(a), 0, -b.lo, false);
  return WHOLE;
}

/** Quotient by a divisor in `lo … hi`, `hi > 0`; `lo` may be 0, which itself is left out. */
function quotientByPositive(a: Interval, lo: number, hi: number, certain: boolean): Interval {
  return {
    lo: a.lo >= 0 ? quotientDown(a.lo, hi) : quotientDown(a.lo, lo),
    hi: a.hi <= 0 ? quotientUp(a.hi, hi) : quotientUp(a.hi, lo),
    certain,
  };
}

/** `a ÷ b` for b ≥ 0, as the end of a range: 0 stands for a number that comes near it. */
export function quotientDown(a: number, b: number): number {
  if (a === 0) return 0;
  if (b === 0) return a < 0 ? -Infinity : 0;
  if (b === Infinity) return a < 0 ? -Number.MIN_VALUE : 0;
  return divideDown(a, b);
}

export function quotientUp(a: number, b: number): number {
  if (a === 0) return 0;
  if (b === 0) return a > 0 ? Infinity : 0;
  if (b === Infinity) return a > 0 ? Number.MIN_VALUE : 0;
  return divideUp(a, b);
}

/** Square: never below zero, which `a × a` of a range that spans zero would not know. */
export function squareRange(a: Interval): Interval {
  const near = holdsZero(a) ? 0 : Math.min(Math.abs(a.lo), Math.abs(a.hi));
  const far = Math.max(Math.abs(a.lo), Math.abs(a.hi));
  return { lo: multiplyDown(near, near), hi: multiplyUp(far, far), certain: a.certain };
}
