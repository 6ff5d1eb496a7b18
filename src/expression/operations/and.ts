import type { Operation } from '../operation.ts';
import { range } from '../ranges.ts';
import { wrap } from '../tex.ts';
import { truthAt } from './demands.ts';

/** Truths are 0 and 1, so that both hold is their product. */
export const and: Operation = {
  arity: [2, Infinity],
  pairwise: 'and',
  commutes: true,
  usage: 'and(p, q, …)',
  says: 'Whether all hold',
  dimension: (args) => args.map((_, i) => truthAt(args, i))[0]!,
  value: ([a, b]) => a! * b!,
  range: ([a, b]) => range(a!.lo * b!.lo, a!.hi * b!.hi, a!.certain && b!.certain),
  slope: ([a, b]) => [b!, a!],
  slopeRange: ([a, b]) => [b!, a!],
  code: ([a, b]) => `${a} * ${b}`,
  tex: (args) => ({ tex: args.map((arg) => wrap(arg, 'sum')).join(' \\land '), binds: 'relation' }),
};
