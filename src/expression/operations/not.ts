import type { Operation } from '../operation.ts';
import { MINUS_ONE, range } from '../ranges.ts';
import { brackets } from '../tex.ts';
import { truthAt } from './demands.ts';

export const not: Operation = {
  arity: [1, 1],
  usage: 'not(p)',
  says: 'Whether p fails',
  dimension: (args) => truthAt(args, 0),
  value: ([a]) => 1 - a!,
  range: ([a]) => range(1 - a!.hi, 1 - a!.lo, a!.certain),
  slope: () => [-1],
  slopeRange: () => [MINUS_ONE],
  code: ([a]) => `1 - ${a}`,
  tex: ([a]) => ({ tex: `\\lnot ${brackets(a!.tex)}`, binds: 'power' }),
};
