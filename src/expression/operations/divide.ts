import { divided } from '../../quantity/dimension.ts';
import type { Operation } from '../operation.ts';
import { divideRanges, negateRange, ONE } from '../ranges.ts';
import { fraction } from '../tex.ts';
import { quantityAt } from './demands.ts';

/** A divisor that can be zero leaves the range open on the side where it runs away, and not certain. */
export const divide: Operation = {
  arity: [2, 2],
  usage: 'a / b',
  says: 'Quotient',
  dimension: (args) => divided(quantityAt(args, 0), quantityAt(args, 1)),
  value: ([a, b]) => a! / b!,
  range: ([a, b]) => divideRanges(a!, b!),
  slope: ([, b], value) => [1 / b!, -value / b!],
  slopeRange: ([, b], value) => [divideRanges(ONE, b!), negateRange(divideRanges(value, b!))],
  code: ([a, b]) => `${a} / ${b}`,
  tex: ([a, b]) => fraction(a!, b!),
};
