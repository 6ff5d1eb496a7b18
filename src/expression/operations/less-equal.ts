import type { Operation } from '../operation.ts';
import { comparable, relationTex, truthRange, turningOff } from './less.ts';

export const lessEqual: Operation = {
  arity: [2, 2],
  usage: 'a <= b',
  says: 'Whether a is at most b',
  dimension: comparable,
  value: ([a, b]) => (a! <= b! ? 1 : a! > b! ? 0 : Number.NaN),
  range: (args) => truthRange(args, args[0]!.hi <= args[1]!.lo, args[0]!.lo > args[1]!.hi),
  slope: () => [0, 0],
  slopeRange: (_, value) => turningOff(value),
  code: ([a, b]) => `${a} <= ${b} ? 1 : ${a} > ${b} ? 0 : NaN`,
  tex: (args) => relationTex(args, '\\le'),
};
