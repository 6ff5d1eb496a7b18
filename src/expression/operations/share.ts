import { pureNumber } from '../../quantity/dimension.ts';
import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { addRanges, divideRanges, negateRange, range } from '../ranges.ts';
import { addDown, addUp, divideDown, divideUp, libraryDown, libraryUp } from '../rounding.ts';
import { fraction } from '../tex.ts';
import { alike } from './demands.ts';

/** For both at least 0 it rises in a and falls in b. The steps outward are for `value`, which rounds twice on its way. */
export function shareRange(a: Interval, b: Interval): Interval {
  const certain = a.certain && b.certain;
  if (a.lo < 0 || b.lo < 0) return divideRanges(a, addRanges(a, b));
  const lo = a.lo === 0 || b.hi === Infinity ? 0 : libraryDown(divideDown(a.lo, addUp(a.lo, b.hi)));
  const hi = a.hi === Infinity || b.lo === 0 ? 1 : Math.min(1, libraryUp(divideUp(a.hi, addDown(a.hi, b.lo))));
  return range(Math.max(0, lo), hi, certain && (a.lo > 0 || b.lo > 0));
}

/** One of the two is infinite or they are large: the quotients still say where the slope lies. */
function slopeRanges(a: Interval, b: Interval): Interval[] {
  const whole = addRanges(a, b);
  const shareOfA = shareRange(a, b);
  const shareOfB = shareRange(b, a);
  return [divideRanges(shareOfB, whole), negateRange(divideRanges(shareOfA, whole))];
}

/**
 * The part that a has of a whole, a/(a + b): what a divider passes on. An operation of its own: written out, a stands
 * twice, and two 100 Ω ±10 % parts come out as 0.41 … 0.61. For a, b ≥ 0 its corners are its range: 0.45 … 0.55.
 * Tapes turn `a / (a + b)` into it.
 */
export const share: Operation = {
  arity: [2, 2],
  usage: 'share(a, b)',
  says: 'The part that a has of the whole, a / (a + b)',
  dimension: (args) => {
    alike(args);
    return pureNumber;
  },
  value: ([a, b]) => a! / (a! + b!),
  range: ([a, b]) => shareRange(a!, b!),
  slope: ([a, b]) => {
    const whole = a! + b!;
    return [b! / whole / whole, -a! / whole / whole];
  },
  slopeRange: ([a, b]) => slopeRanges(a!, b!),
  code: ([a, b]) => `${a} / (${a} + ${b})`,
  tex: ([a, b]) => fraction(a!, { tex: `${a!.tex} + ${b!.tex}`, binds: 'sum' }),
};
