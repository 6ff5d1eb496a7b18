import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { range } from '../ranges.ts';
import { libraryDown, libraryUp } from '../rounding.ts';
import { called } from '../tex.ts';
import { pureAt } from './demands.ts';

const TURN = 2 * Math.PI;

/** Whether `a` may hold a number `at + 2πk`. Says yes where rounding leaves it open, which only widens a range. */
function mayHold(a: Interval, at: number): boolean {
  const margin = 1e-15 * (1 + Math.abs(a.lo) + Math.abs(a.hi));
  return Math.ceil((a.lo - at) / TURN - margin) <= Math.floor((a.hi - at) / TURN + margin);
}

/** Range of a wave of height 1 that is highest at `crest + 2πk` and monotone between crests and troughs. */
export function waveRange(a: Interval, wave: (x: number) => number, crest: number): Interval {
  if (!(a.hi - a.lo < TURN)) return range(-1, 1, a.certain);
  const atLo = wave(a.lo);
  const atHi = wave(a.hi);
  const lo = mayHold(a, crest + Math.PI) ? -1 : Math.max(-1, libraryDown(Math.min(atLo, atHi)));
  const hi = mayHold(a, crest) ? 1 : Math.min(1, libraryUp(Math.max(atLo, atHi)));
  return range(lo, hi, a.certain);
}

export const sineRange = (a: Interval): Interval => waveRange(a, Math.sin, Math.PI / 2);

export const sin: Operation = {
  arity: [1, 1],
  usage: 'sin(a)',
  says: 'Sine of an angle in radians',
  dimension: (args) => pureAt(args, 0, 'sin'),
  value: ([a]) => Math.sin(a!),
  range: ([a]) => sineRange(a!),
  slope: ([a]) => [Math.cos(a!)],
  slopeRange: ([a]) => [waveRange(a!, Math.cos, 0)],
  code: ([a]) => `Math.sin(${a})`,
  tex: (args) => called('\\sin', args),
};
