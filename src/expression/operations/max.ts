import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { ONE, range, UNSETTLED, ZERO } from '../ranges.ts';
import { called } from '../tex.ts';
import { alike } from './demands.ts';

function slopes(a: Interval, b: Interval): Interval[] {
  if (a.lo > b.hi) return [ONE, ZERO];
  if (b.lo > a.hi) return [ZERO, ONE];
  return [UNSETTLED, UNSETTLED];
}

export const max: Operation = {
  arity: [2, Infinity],
  pairwise: 'max',
  commutes: true,
  usage: 'max(a, b, …)',
  says: 'Largest of its arguments',
  dimension: (args) => alike(args),
  value: ([a, b]) => Math.max(a!, b!),
  range: ([a, b]) => range(Math.max(a!.lo, b!.lo), Math.max(a!.hi, b!.hi), a!.certain && b!.certain),
  slope: ([a, b]) => (a! >= b! ? [1, 0] : [0, 1]),
  slopeRange: ([a, b]) => slopes(a!, b!),
  code: ([a, b]) => `Math.max(${a}, ${b})`,
  tex: (args) => called('\\max', args),
};
