import type { Operation } from '../operation.ts';
import { range } from '../ranges.ts';
import { called } from '../tex.ts';
import { pureAt } from './demands.ts';
import { stairSlope } from './stairs.ts';

export const round: Operation = {
  arity: [1, 1],
  usage: 'round(a)',
  says: 'Nearest whole number; a half goes up',
  dimension: (args) => pureAt(args, 0, 'round'),
  value: ([a]) => Math.round(a!),
  range: ([a]) => range(Math.round(a!.lo), Math.round(a!.hi), a!.certain),
  slope: () => [0],
  slopeRange: (_, value) => [stairSlope(value)],
  code: ([a]) => `Math.round(${a})`,
  tex: (args) => called('\\operatorname{round}', args),
};
