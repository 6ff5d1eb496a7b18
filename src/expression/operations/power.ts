import { isPure, pureNumber, raised } from '../../quantity/dimension.ts';
import { DimensionError } from '../dimension-error.ts';
import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { divideRanges, multiplyRanges, ONE, point, range, squareRange, subtractRanges, WHOLE } from '../ranges.ts';
import { libraryDown, libraryUp } from '../rounding.ts';
import { raisedTex } from '../tex.ts';
import { described, pureAt, quantityAt } from './demands.ts';
import { ln } from './ln.ts';

/**
 * `a^b`. Below zero it exists for whole exponents only; the range leaves the rest out and is then not certain.
 * A base with a unit needs an exponent that is a plain number, or the unit of the result would depend on a value.
 */
export const power: Operation = {
  arity: [2, 2],
  usage: 'a ^ b',
  says: 'Power; binds tighter than a sign before it, and from the right: a^b^c is a^(b^c)',
  dimension: (args) => {
    const base = quantityAt(args, 0);
    pureAt(args, 1, 'an exponent');
    if (isPure(base)) return pureNumber;
    const exponent = args[1]!.constant;
    if (exponent !== undefined) return raised(base, exponent);
    throw new DimensionError({
      argument: 1,
      found: `\`${args[1]!.text}\`, which is not a plain number`,
      expected: `an exponent such as 2, because ${described(args[0]!)}, has a unit`,
    });
  },
  value: ([a, b]) => a! ** b!,
  range: ([a, b]) => powerRange(a!, b!),
  slope: ([a, b], value) => [b === 0 ? 0 : b! * a! ** (b! - 1), value === 0 ? 0 : value * Math.log(a!)],
  slopeRange: ([a, b], value) => [
    b!.lo === 0 && b!.hi === 0 ? point(0) : multiplyRanges(b!, powerRange(a!, subtractRanges(b!, ONE))),
    b!.lo === b!.hi ? slopeByExponentAtPoint(a!, value) : multiplyRanges(value, ln.range([a!])),
  ],
  code: ([a, b]) => `Math.pow(${a}, ${b})`,
  tex: ([a, b]) => raisedTex(a!, b!.tex),
};

// An exponent that does not move may have a base below zero, where the logarithm says nothing: nobody moves along it.
function slopeByExponentAtPoint(a: Interval, value: Interval): Interval {
  return a.lo > 0 ? multiplyRanges(value, ln.range([a])) : { ...WHOLE, certain: true };
}

function powerRange(a: Interval, b: Interval): Interval {
  const certain = a.certain && b.certain;
  if (b.lo === b.hi && Number.isInteger(b.lo)) return wholePower(a, b.lo, certain);
  if (a.lo > 0) return cornersOf(a.lo, a.hi, b, certain);
  // Below zero there are values where the exponent is whole, of either sign.
  if (a.hi < 0 || (a.lo < 0 && Math.ceil(b.lo) <= b.hi)) return WHOLE;
  return b.lo >= 0 ? cornersOf(0, a.hi, b, certain && a.lo === 0) : range(0, Infinity, false);
}

/** For a base of at least zero the exponent times the logarithm is bilinear, so the extremes stand at corners. */
function cornersOf(lo: number, hi: number, b: Interval, certain: boolean): Interval {
  const corners = [lo ** b.lo, lo ** b.hi, hi ** b.lo, hi ** b.hi].map((x) => (Number.isNaN(x) ? 1 : x));
  // 0^0 is 1 while 0^b tends to 0: a base that reaches zero with an exponent that does takes both.
  if (lo === 0 && b.lo === 0) corners.push(0, 1);
  return range(Math.max(0, libraryDown(Math.min(...corners))), libraryUp(Math.max(...corners)), certain);
}

function wholePower(a: Interval, n: number, certain: boolean): Interval {
  if (n === 0) return range(1, 1, certain);
  if (n === 1) return range(a.lo, a.hi, certain);
  if (n === 2) return squareRange(range(a.lo, a.hi, certain));
  if (n < 0) return divideRanges(ONE, wholePower(a, -n, certain));
  const even = n % 2 === 0;
  if (!even || a.lo >= 0) return monotone(a.lo, a.hi, n, certain);
  if (a.hi <= 0) return monotone(-a.hi, -a.lo, n, certain);
  return range(0, libraryUp(Math.max(-a.lo, a.hi) ** n), certain);
}

function monotone(lo: number, hi: number, n: number, certain: boolean): Interval {
  const low = lo === 0 ? 0 : libraryDown(lo ** n);
  const high = hi === 0 ? 0 : libraryUp(hi ** n);
  return range(lo >= 0 ? Math.max(0, low) : low, hi <= 0 ? Math.min(0, high) : high, certain);
}
