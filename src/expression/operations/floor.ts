import type { Operation } from '../operation.ts';
import { range } from '../ranges.ts';
import { pureAt } from './demands.ts';
import { stairSlope } from './stairs.ts';

export const floor: Operation = {
  arity: [1, 1],
  usage: 'floor(a)',
  says: 'Largest whole number that is not above a',
  dimension: (args) => pureAt(args, 0, 'floor'),
  value: ([a]) => Math.floor(a!),
  range: ([a]) => range(Math.floor(a!.lo), Math.floor(a!.hi), a!.certain),
  slope: () => [0],
  slopeRange: (_, value) => [stairSlope(value)],
  code: ([a]) => `Math.floor(${a})`,
  tex: (args) => ({ tex: `\\lfloor ${args[0]!.tex} \\rfloor`, binds: 'atom' }),
};
