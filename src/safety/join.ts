import type { Interval } from '../expression/interval.ts';
import { point } from '../expression/ranges.ts';
import type { Fed } from './fed.ts';
import type { HazardQuantity } from './safety-data.ts';
import { ANYTHING, type Truth } from './truths.ts';

/** A sum counts all on the way up and only the largest on the way down; else the most dangerous source counts. */
export function joined(fed: readonly Fed[], { danger, several }: HazardQuantity): Interval {
  const ends = fed.map(({ bounds, count }) => {
    const times = several === 'sum' ? count : 1;
    return { hi: bounds.hi * times, lo: bounds.lo * times };
  });
  if (danger === 'up')
    return upTo(
      several === 'sum' ? ends.reduce((sum, { hi }) => sum + hi, 0) : Math.max(...ends.map(({ hi }) => hi)),
      fed,
    );
  const lo = several === 'sum' ? Math.max(...ends.map((end) => end.lo)) : Math.min(...ends.map((end) => end.lo));
  if (lo > -Infinity) return point(lo);
  return { lo: 0, hi: Math.min(...ends.map(({ hi }) => hi)), certain: false };
}

/** The most that the sources say; where one of them has no number, at least what the others make certain. */
function upTo(hi: number, fed: readonly Fed[]): Interval {
  if (hi < Infinity || fed.some(({ bounds }) => bounds.lo === Infinity)) return point(hi);
  const sure = fed.map(({ bounds }) => (bounds.hi < Infinity ? bounds.hi : bounds.lo)).filter(Number.isFinite);
  return { lo: Math.max(0, ...sure), hi: Infinity, certain: false };
}

/** The given number, or what the equation makes certain where that is more dangerous. */
export function withEquation(given: Interval, equation: Interval | undefined, { danger }: HazardQuantity): Interval {
  if (!equation) return given;
  if (danger === 'up') {
    const lo = Math.max(given.lo, equation.lo);
    return { lo, hi: given.lo === given.hi ? lo : Infinity, certain: given.certain };
  }
  const hi = Math.min(given.hi, equation.hi);
  return { lo: given.lo === given.hi ? hi : 0, hi, certain: given.certain };
}

/** The usual value, where the tables have one; else nothing is known. */
export const standIn = ({ default: usual }: HazardQuantity): Interval => (usual ? point(usual.si) : ANYTHING);

/** The range, open above where it may be endless. */
export function withoutEnd(range: Interval, endless: Truth): Interval {
  if (endless === 'no') return range;
  return endless === 'yes' ? point(Infinity) : { lo: range.lo, hi: Infinity, certain: false };
}

/** A range that is closed at its dangerous end is as good as that end. */
export function dangerous({ lo, hi }: Interval, { danger }: HazardQuantity): Interval {
  if (danger === 'up')
    return hi < Infinity || lo === Infinity ? point(hi) : { lo: Math.max(0, lo), hi, certain: false };
  return lo > 0 || lo === hi ? point(lo) : { lo: 0, hi, certain: false };
}
