import type { Operation } from '../operation.ts';
import { negateRange } from '../ranges.ts';
import { called } from '../tex.ts';
import { pureAt } from './demands.ts';
import { sineRange, waveRange } from './sin.ts';

export const cos: Operation = {
  arity: [1, 1],
  usage: 'cos(a)',
  says: 'Cosine of an angle in radians',
  dimension: (args) => pureAt(args, 0, 'cos'),
  value: ([a]) => Math.cos(a!),
  range: ([a]) => waveRange(a!, Math.cos, 0),
  slope: ([a]) => [-Math.sin(a!)],
  slopeRange: ([a]) => [negateRange(sineRange(a!))],
  code: ([a]) => `Math.cos(${a})`,
  tex: (args) => called('\\cos', args),
};
