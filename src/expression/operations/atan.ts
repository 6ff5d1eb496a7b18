import type { Operation } from '../operation.ts';
import { addRanges, divideRanges, ONE, range, squareRange } from '../ranges.ts';
import { libraryDown, libraryUp } from '../rounding.ts';
import { called } from '../tex.ts';
import { pureAt } from './demands.ts';

export const atan: Operation = {
  arity: [1, 1],
  usage: 'atan(a)',
  says: 'The angle whose tangent is a, in radians, between -pi/2 and pi/2',
  dimension: (args) => pureAt(args, 0, 'atan'),
  value: ([a]) => Math.atan(a!),
  range: ([a]) => range(libraryDown(Math.atan(a!.lo)), libraryUp(Math.atan(a!.hi)), a!.certain),
  slope: ([a]) => [1 / (1 + a! * a!)],
  slopeRange: ([a]) => [divideRanges(ONE, addRanges(ONE, squareRange(a!)))],
  code: ([a]) => `Math.atan(${a})`,
  tex: (args) => called('\\arctan', args),
};
