import type { Operation } from '../operation.ts';
import { holdsZero, MINUS_ONE, ONE, range } from '../ranges.ts';
import { quantityAt } from './demands.ts';

export const abs: Operation = {
  arity: [1, 1],
  usage: 'abs(a)',
  says: 'Size without sign',
  dimension: (args) => quantityAt(args, 0),
  value: ([a]) => Math.abs(a!),
  range: ([a]) => {
    const { lo, hi, certain } = a!;
    const near = holdsZero(a!) ? 0 : Math.min(Math.abs(lo), Math.abs(hi));
    return range(near, Math.max(Math.abs(lo), Math.abs(hi)), certain);
  },
  slope: ([a]) => [Math.sign(a!)],
  slopeRange: ([a]) => [a!.lo > 0 ? ONE : a!.hi < 0 ? MINUS_ONE : range(-1, 1)],
  code: ([a]) => `Math.abs(${a})`,
  tex: ([a]) => ({ tex: `\\left|${a!.tex}\\right|`, binds: 'atom' }),
};
