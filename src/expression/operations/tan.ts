import type { Operation } from '../operation.ts';
import { addRanges, ONE, range, squareRange, WHOLE } from '../ranges.ts';
import { libraryDown, libraryUp } from '../rounding.ts';
import { called } from '../tex.ts';
import { pureAt } from './demands.ts';

/** Tangent; over a range that reaches a pole (a quarter turn) nothing is certain. */
export const tan: Operation = {
  arity: [1, 1],
  usage: 'tan(a)',
  says: 'Tangent of an angle in radians',
  dimension: (args) => pureAt(args, 0, 'tan'),
  value: ([a]) => Math.tan(a!),
  range: ([a]) => {
    const { lo, hi, certain } = a!;
    const margin = 1e-15 * (1 + Math.abs(lo) + Math.abs(hi));
    const branch = Math.floor(lo / Math.PI + 0.5 - margin);
    if (branch !== Math.floor(hi / Math.PI + 0.5 + margin)) return WHOLE;
    return range(libraryDown(Math.tan(lo)), libraryUp(Math.tan(hi)), certain);
  },
  slope: (_, value) => [1 + value * value],
  slopeRange: (_, value) => [addRanges(ONE, squareRange(value))],
  code: ([a]) => `Math.tan(${a})`,
  tex: (args) => called('\\tan', args),
};
