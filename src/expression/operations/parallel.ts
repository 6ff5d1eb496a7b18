import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { addRanges, divideRanges, multiplyRanges, range, squareRange } from '../ranges.ts';
import { addDown, addUp, divideDown, divideUp, libraryDown, libraryUp, multiplyDown, multiplyUp } from '../rounding.ts';
import { wrap } from '../tex.ts';
import { alike } from './demands.ts';
import { shareRange } from './share.ts';

const together = (a: number, b: number): number => (a * b) / (a + b);

// The steps further outward are for `value`, which rounds three times on its way where the corner is not exact.
function lowest(a: number, b: number): number {
  if (a === 0 || b === 0) return 0;
  if (a === Infinity || b === Infinity) return Math.min(a, b);
  const low = divideDown(multiplyDown(a, b), addUp(a, b));
  return low === divideUp(multiplyUp(a, b), addDown(a, b)) ? low : Math.max(0, libraryDown(low));
}

function highest(a: number, b: number): number {
  if (a === 0 || b === 0) return 0;
  if (a === Infinity || b === Infinity) return Math.min(a, b);
  const high = divideUp(multiplyUp(a, b), addDown(a, b));
  return high === divideDown(multiplyDown(a, b), addUp(a, b)) ? high : libraryUp(high);
}

function rangeOf(a: Interval, b: Interval): Interval {
  const certain = a.certain && b.certain;
  if (a.lo >= 0 && b.lo >= 0) {
    return range(lowest(a.lo, b.lo), highest(a.hi, b.hi), certain && (a.lo > 0 || b.lo > 0));
  }
  return divideRanges(multiplyRanges(a, b), addRanges(a, b));
}

/**
 * Two impedances side by side, a·b/(a + b). An operation of its own: written out, each name stands twice and the worst
 * case of two 100 Ω ±10 % parts comes out as 36.8 … 67.2 Ω. For a, b ≥ 0 it rises in both, so the corners are its
 * range: 45 … 55 Ω.
 */
export const parallel: Operation = {
  arity: [2, Infinity],
  pairwise: 'parallel',
  commutes: true,
  usage: 'parallel(a, b, …)',
  says: 'Impedances side by side: 1/(1/a + 1/b + …)',
  dimension: (args) => alike(args),
  value: ([a, b]) => together(a!, b!),
  range: ([a, b]) => rangeOf(a!, b!),
  slope: ([a, b]) => [(b! / (a! + b!)) ** 2, (a! / (a! + b!)) ** 2],
  slopeRange: ([a, b]) => [squareRange(shareRange(b!, a!)), squareRange(shareRange(a!, b!))],
  code: ([a, b]) => `${a} * ${b} / (${a} + ${b})`,
  tex: (args) => ({ tex: args.map((arg) => wrap(arg, 'product')).join(' \\parallel '), binds: 'relation' }),
};
