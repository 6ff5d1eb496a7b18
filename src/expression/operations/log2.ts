import type { Operation } from '../operation.ts';
import { divideRanges, multiplyRanges, ONE, range } from '../ranges.ts';
import { down, up } from '../rounding.ts';
import { called } from '../tex.ts';
import { pureAt } from './demands.ts';
import { logarithmRange } from './ln.ts';

const SCALE = range(down(Math.LN2), up(Math.LN2));

export const log2: Operation = {
  arity: [1, 1],
  usage: 'log2(a)',
  says: 'Logarithm to the base 2, for a above 0',
  dimension: (args) => pureAt(args, 0, 'log2'),
  value: ([a]) => Math.log2(a!),
  range: ([a]) => logarithmRange(a!, Math.log2),
  slope: ([a]) => [1 / (a! * Math.LN2)],
  slopeRange: ([a]) => [divideRanges(ONE, multiplyRanges(a!, SCALE))],
  code: ([a]) => `Math.log2(${a})`,
  tex: (args) => called('\\log_{2}', args),
};
