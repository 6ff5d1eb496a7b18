import { type Box, within } from './box.ts';
import { prove } from './branch-and-bound.ts';
import type { Point } from './corner.ts';
import type { BoardFunction } from './function.ts';

/**
 * Whether a function is proven to stay at or above a value all over several boxes, as far as the budget goes. Cheaper than to
 * find its least value.
 * @param start  all variables: where to look first
 */
export function neverBelow(
  f: BoardFunction,
  boxes: readonly Box[],
  start: Float64Array,
  value: number,
  budget: number,
): boolean {
  const parts = boxes.map((box) => within(box, f.variables));
  const starts = parts.map(({ lo, hi }): Point => {
    const at = lo.map((low, i) => Math.min(Math.max(start[f.variables[i]!]!, low), hi[i]!));
    return { at, value: -f.value(at) };
  });
  return prove(f, parts, -1, starts, { tolerance: 0, budget, enough: -value }).bound <= -value;
}
