import type { Operation } from '../operation.ts';
import { wrap } from '../tex.ts';
import { add } from './add.ts';

export const sum: Operation = {
  ...add,
  arity: [1, Infinity],
  pairwise: 'add',
  usage: 'sum(a, b, …)',
  says: 'All arguments added',
  tex: (args) => ({
    tex: args.map((arg, i) => wrap(arg, i === 0 ? 'sum' : 'product')).join(' + '),
    binds: 'sum',
  }),
};
