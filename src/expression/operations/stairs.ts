import type { Interval } from '../interval.ts';
import { RISING, ZERO } from '../ranges.ts';

/** Slope of a function that rises in steps: flat where it takes one value, anything upward where it may jump. */
export function stairSlope(value: Interval): Interval {
  return value.lo === value.hi ? ZERO : RISING;
}
