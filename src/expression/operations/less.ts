import type { Interval } from '../interval.ts';
import type { Operand, Operation, Tex } from '../operation.ts';
import { FALLING, RISING, range, ZERO } from '../ranges.ts';
import { wrap } from '../tex.ts';
import { alike } from './demands.ts';

/** What all four comparisons share. */

export function comparable(args: readonly Operand[]): 'truth' {
  alike(args);
  return 'truth';
}

/** Range of a truth that surely holds, surely fails, or is open. */
export function truthRange([a, b]: readonly Interval[], holds: boolean, fails: boolean): Interval {
  return range(holds ? 1 : 0, fails ? 0 : 1, a!.certain && b!.certain);
}

/** A truth that turns from 1 to 0 as its first argument grows and its second falls: no slope, or a jump. */
export function turningOff(value: Interval): Interval[] {
  return value.lo === value.hi ? [ZERO, ZERO] : [FALLING, RISING];
}

export function turningOn(value: Interval): Interval[] {
  return value.lo === value.hi ? [ZERO, ZERO] : [RISING, FALLING];
}

export function relationTex([a, b]: readonly Tex[], sign: string): Tex {
  return { tex: `${wrap(a!, 'sum')} ${sign} ${wrap(b!, 'sum')}`, binds: 'relation' };
}

export const less: Operation = {
  arity: [2, 2],
  usage: 'a < b',
  says: 'Whether a is below b',
  dimension: comparable,
  value: ([a, b]) => (a! < b! ? 1 : a! >= b! ? 0 : Number.NaN),
  range: (args) => truthRange(args, args[0]!.hi < args[1]!.lo, args[0]!.lo >= args[1]!.hi),
  slope: () => [0, 0],
  slopeRange: (_, value) => turningOff(value),
  code: ([a, b]) => `${a} < ${b} ? 1 : ${a} >= ${b} ? 0 : NaN`,
  tex: (args) => relationTex(args, '<'),
};
