import type { Operation } from '../operation.ts';
import { MINUS_ONE, ONE, subtractRanges } from '../ranges.ts';
import { wrap } from '../tex.ts';
import { alike } from './demands.ts';

export const subtract: Operation = {
  arity: [2, 2],
  usage: 'a - b',
  says: 'Difference',
  dimension: (args) => alike(args),
  value: ([a, b]) => a! - b!,
  range: ([a, b]) => subtractRanges(a!, b!),
  slope: () => [1, -1],
  slopeRange: () => [ONE, MINUS_ONE],
  code: ([a, b]) => `${a} - ${b}`,
  tex: ([a, b]) => ({ tex: `${wrap(a!, 'sum')} - ${wrap(b!, 'product')}`, binds: 'sum' }),
};
