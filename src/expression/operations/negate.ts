import type { Operation } from '../operation.ts';
import { MINUS_ONE, negateRange } from '../ranges.ts';
import { negative } from '../tex.ts';
import { quantityAt } from './demands.ts';

/** Binds looser than a power: `-a^2` is `-(a^2)`. */
export const negate: Operation = {
  arity: [1, 1],
  usage: '-a',
  says: 'The same size with the other sign',
  dimension: (args) => quantityAt(args, 0),
  value: ([a]) => -a!,
  range: ([a]) => negateRange(a!),
  slope: () => [-1],
  slopeRange: () => [MINUS_ONE],
  code: ([a]) => `-${a}`,
  tex: ([a]) => negative(a!),
};
