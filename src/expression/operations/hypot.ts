import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { addRanges, divideRanges, meet, squareRange } from '../ranges.ts';
import { raisedTex } from '../tex.ts';
import { alike } from './demands.ts';
import { sqrt } from './sqrt.ts';

// A side is never longer than the whole, which the quotient of two ranges does not know.
const shareOf = (side: Interval, whole: Interval): Interval => meet(divideRanges(side, whole), -1, 1);

/** Root of the sum of squares. Not `Math.hypot`: its steps are the platform's own, and the kernels must repeat them. */
export const hypot: Operation = {
  arity: [2, Infinity],
  pairwise: 'hypot',
  commutes: true,
  usage: 'hypot(a, b, …)',
  says: 'Root of the sum of squares',
  dimension: (args) => alike(args),
  value: ([a, b]) => Math.sqrt(a! * a! + b! * b!),
  range: ([a, b]) => sqrt.range([addRanges(squareRange(a!), squareRange(b!))]),
  slope: ([a, b], value) => (value === 0 ? [0, 0] : [a! / value, b! / value]),
  slopeRange: ([a, b], value) => [shareOf(a!, value), shareOf(b!, value)],
  code: ([a, b]) => `Math.sqrt(${a} * ${a} + ${b} * ${b})`,
  tex: (args) => ({ tex: `\\sqrt{${args.map((arg) => raisedTex(arg, '2').tex).join(' + ')}}`, binds: 'atom' }),
};
