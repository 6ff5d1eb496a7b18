import type { Operation } from '../operation.ts';
import { divideRanges, multiplyRanges, ONE, range } from '../ranges.ts';
import { down, up } from '../rounding.ts';
import { called } from '../tex.ts';
import { pureAt } from './demands.ts';
import { logarithmRange } from './ln.ts';

const SCALE = range(down(Math.LN10), up(Math.LN10));

export const log10: Operation = {
  arity: [1, 1],
  usage: 'log10(a)',
  says: 'Logarithm to the base 10, for a above 0',
  dimension: (args) => pureAt(args, 0, 'log10'),
  value: ([a]) => Math.log10(a!),
  range: ([a]) => logarithmRange(a!, Math.log10),
  slope: ([a]) => [1 / (a! * Math.LN10)],
  slopeRange: ([a]) => [divideRanges(ONE, multiplyRanges(a!, SCALE))],
  code: ([a]) => `Math.log10(${a})`,
  tex: (args) => called('\\log_{10}', args),
};
