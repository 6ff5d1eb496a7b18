import { raised } from '../../quantity/dimension.ts';
import type { Operation } from '../operation.ts';
import { divideRanges, range, WHOLE } from '../ranges.ts';
import { sqrtDown, sqrtUp } from '../rounding.ts';
import { quantityAt } from './demands.ts';

const HALF = range(0.5, 0.5);

/** Square root, for a ≥ 0. A range that reaches below zero gives the root of the rest, not certain. */
export const sqrt: Operation = {
  arity: [1, 1],
  usage: 'sqrt(a)',
  says: 'Square root, for a of at least 0',
  dimension: (args) => raised(quantityAt(args, 0), 0.5),
  value: ([a]) => Math.sqrt(a!),
  range: ([a]) => {
    if (a!.hi < 0) return WHOLE;
    return range(sqrtDown(Math.max(0, a!.lo)), sqrtUp(a!.hi), a!.certain && a!.lo >= 0);
  },
  slope: (_, value) => [0.5 / value],
  slopeRange: (_, value) => [divideRanges(HALF, value)],
  code: ([a]) => `Math.sqrt(${a})`,
  tex: ([a]) => ({ tex: `\\sqrt{${a!.tex}}`, binds: 'atom' }),
};
