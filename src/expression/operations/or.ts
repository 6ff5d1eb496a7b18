import type { Operation } from '../operation.ts';
import { range } from '../ranges.ts';
import { wrap } from '../tex.ts';
import { truthAt } from './demands.ts';
import { not } from './not.ts';

export const or: Operation = {
  arity: [2, Infinity],
  pairwise: 'or',
  commutes: true,
  usage: 'or(p, q, …)',
  says: 'Whether at least one holds',
  dimension: (args) => args.map((_, i) => truthAt(args, i))[0]!,
  value: ([a, b]) => Math.max(a!, b!),
  range: ([a, b]) => range(Math.max(a!.lo, b!.lo), Math.max(a!.hi, b!.hi), a!.certain && b!.certain),
  // a + b − ab over truths: each counts where the other fails.
  slope: ([a, b]) => [1 - b!, 1 - a!],
  slopeRange: ([a, b]) => [not.range([b!]), not.range([a!])],
  code: ([a, b]) => `Math.max(${a}, ${b})`,
  tex: (args) => ({ tex: args.map((arg) => wrap(arg, 'sum')).join(' \\lor '), binds: 'relation' }),
};
