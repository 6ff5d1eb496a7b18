import type { Operation } from '../operation.ts';
import { range } from '../ranges.ts';
import { pureAt } from './demands.ts';
import { stairSlope } from './stairs.ts';

export const ceil: Operation = {
  arity: [1, 1],
  usage: 'ceil(a)',
  says: 'Smallest whole number that is not below a',
  dimension: (args) => pureAt(args, 0, 'ceil'),
  value: ([a]) => Math.ceil(a!),
  range: ([a]) => range(Math.ceil(a!.lo), Math.ceil(a!.hi), a!.certain),
  slope: () => [0],
  slopeRange: (_, value) => [stairSlope(value)],
  code: ([a]) => `Math.ceil(${a})`,
  tex: (args) => ({ tex: `\\lceil ${args[0]!.tex} \\rceil`, binds: 'atom' }),
};
