import { raised } from '../../quantity/dimension.ts';
import type { Operation } from '../operation.ts';
import { multiplyRanges, range, squareRange } from '../ranges.ts';
import { raisedTex } from '../tex.ts';
import { quantityAt } from './demands.ts';

const TWO = range(2, 2);

/**
 * The square, an operation of its own: `a * a` over −1 … 1 would come out as −1 … 1, the square is 0 … 1. Tapes turn
 * `a^2` and `a * a` into it.
 */
export const square: Operation = {
  arity: [1, 1],
  usage: 'square(a)',
  says: 'a times itself, as a^2',
  dimension: (args) => raised(quantityAt(args, 0), 2),
  value: ([a]) => a! * a!,
  range: ([a]) => squareRange(a!),
  slope: ([a]) => [2 * a!],
  slopeRange: ([a]) => [multiplyRanges(TWO, a!)],
  code: ([a]) => `${a} * ${a}`,
  tex: ([a]) => raisedTex(a!, '2'),
};
