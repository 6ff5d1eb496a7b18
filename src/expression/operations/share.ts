import { pureNumber } from '../../quantity/dimension.ts';
import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { addRanges, divideRanges, negateRange, range } from '../ranges.ts';
import { addDown, addUp, divideDown, divideUp, libraryDown, libraryUp } from '../rounding.ts';
import { fraction } from '../tex.ts';
import { alike } from './demands.ts';

/** For both at least 0 it rises in a and falls in b. */
export function shareRange(a: Interval, b: Interval): Interval {
  const certain = a.certain && b.certain;
  if (a.lo < 0 || b.lo < 0) return divideRanges(a, addRanges(a, b));
  return range(lowest(a.lo, b.hi), highest(a.hi, b.lo), certain && (a.lo > 0 || b.lo > 0));
}

// The steps further outward are for `value`, which rounds twice on its way where the corner is not exact.
function lowest(a: number, b: number): number {
  if (a === 0 || b === Infinity) return 0;
  const low = divideDown(a, addUp(a, b));
  return low === divideUp(a, addDown(a, b)) ? low : Math.max(0, libraryDown(low));
}

function highest(a: number, b: number): number {
  if (a === 0) return 0;
  if (a === Infinity || b === 0) return 1;
  const high = divideUp(a, addDown(a, b));
  return high === divideDown(a, addUp(a, b)) ? high : Math.min(1, libraryUp(high));
}

function slopeRanges(a: Interval, b: Interval): Interval[] {
  const whole = addRanges(a, b);
  return [divideRanges(shareRange(b, a), whole), negateRange(divideRanges(shareRange(a, b), whole))];
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
