import type { Operation } from '../operation.ts';
import { addRanges, ONE } from '../ranges.ts';
import { wrap } from '../tex.ts';
import { alike } from './demands.ts';

export const add: Operation = {
  arity: [2, 2],
  commutes: true,
  usage: 'a + b',
  says: 'Sum',
  dimension: (args) => alike(args),
  value: ([a, b]) => a! + b!,
  range: ([a, b]) => addRanges(a!, b!),
  slope: () => [1, 1],
  slopeRange: () => [ONE, ONE],
  code: ([a, b]) => `${a} + ${b}`,
  tex: ([a, b]) => ({ tex: `${wrap(a!, 'sum')} + ${wrap(b!, 'product')}`, binds: 'sum' }),
};
