import { multiplied } from '../../quantity/dimension.ts';
import type { Operation } from '../operation.ts';
import { multiplyRanges } from '../ranges.ts';
import { juxtaposed } from '../tex.ts';
import { quantityAt } from './demands.ts';

export const multiply: Operation = {
  arity: [2, 2],
  commutes: true,
  usage: 'a * b',
  says: 'Product',
  dimension: (args) => multiplied(quantityAt(args, 0), quantityAt(args, 1)),
  value: ([a, b]) => a! * b!,
  range: ([a, b]) => multiplyRanges(a!, b!),
  slope: ([a, b]) => [b!, a!],
  slopeRange: ([a, b]) => [b!, a!],
  code: ([a, b]) => `${a} * ${b}`,
  tex: ([a, b]) => juxtaposed(a!, b!),
};
