import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { divideRanges, ONE, range, WHOLE } from '../ranges.ts';
import { libraryDown, libraryUp } from '../rounding.ts';
import { called } from '../tex.ts';
import { pureAt } from './demands.ts';

/** Range of a logarithm, which rises: `log` of the ends. Zero and below are left out, and not certain. */
export function logarithmRange(a: Interval, log: (x: number) => number): Interval {
  if (a.hi <= 0) return WHOLE;
  const lo = a.lo > 0 ? libraryDown(log(a.lo)) : -Infinity;
  return range(lo, libraryUp(log(a.hi)), a.certain && a.lo > 0);
}

export const ln: Operation = {
  arity: [1, 1],
  usage: 'ln(a)',
  says: 'Natural logarithm, for a above 0',
  dimension: (args) => pureAt(args, 0, 'ln'),
  value: ([a]) => Math.log(a!),
  range: ([a]) => logarithmRange(a!, Math.log),
  slope: ([a]) => [1 / a!],
  slopeRange: ([a]) => [divideRanges(ONE, a!)],
  code: ([a]) => `Math.log(${a})`,
  tex: (args) => called('\\ln', args),
};
