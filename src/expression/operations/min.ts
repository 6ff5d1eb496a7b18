import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { ONE, range, UNSETTLED, ZERO } from '../ranges.ts';
import { called } from '../tex.ts';
import { alike } from './demands.ts';

function slopes(a: Interval, b: Interval): Interval[] {
  if (a.hi < b.lo) return [ONE, ZERO];
  if (b.hi < a.lo) return [ZERO, ONE];
  return [UNSETTLED, UNSETTLED];
}

export const min: Operation = {
  arity: [2, Infinity],
  pairwise: 'min',
  commutes: true,
  usage: 'min(a, b, …)',
  says: 'Smallest of its arguments',
  dimension: (args) => alike(args),
  value: ([a, b]) => Math.min(a!, b!),
  range: ([a, b]) => range(Math.min(a!.lo, b!.lo), Math.min(a!.hi, b!.hi), a!.certain && b!.certain),
  slope: ([a, b]) => (a! <= b! ? [1, 0] : [0, 1]),
  slopeRange: ([a, b]) => slopes(a!, b!),
  code: ([a, b]) => `Math.min(${a}, ${b})`,
  tex: (args) => called('\\min', args),
};
