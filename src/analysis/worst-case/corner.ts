import type { BoardFunction } from './function.ts';

/** Where a search stands: a point of the box and the value there, oriented so that greater is worse. */
export interface Point {
  readonly at: Float64Array;
  readonly value: number;
}

/**
 * A good corner, found from the signs of the slopes. Where every slope keeps its sign it is the worst one; where not, it
 * is a place to start from.
 * @param sense  1 to look for the greatest value, −1 for the least
 */
export function climb(f: BoardFunction, lo: Float64Array, hi: Float64Array, start: Float64Array, sense: 1 | -1): Point {
  let best: Point = { at: start, value: sense * f.value(start) };
  for (let round = 0; round < 3; round++) {
    const slopes = f.slopesThere();
    const at = best.at.slice();
    for (let i = 0; i < at.length; i++) {
      const rise = sense * slopes[i]!;
      if (rise !== 0 && !Number.isNaN(rise)) at[i] = rise > 0 ? hi[i]! : lo[i]!;
    }
    const value = sense * f.value(at);
    if (!(value > best.value) && !Number.isNaN(best.value)) break;
    best = { at, value };
  }
  return best;
}

/**
 * A better corner, if moving one variable at a time to its other end leads to one. Not a proof: a maximum inside the box,
 * or one that needs two variables to move together, is missed.
 */
export function flip(f: BoardFunction, lo: Float64Array, hi: Float64Array, from: Point, sense: 1 | -1): Point {
  let best = from;
  for (let pass = 0; pass < 4; pass++) {
    let better = false;
    for (let i = 0; i < lo.length; i++) {
      for (const end of [lo[i]!, hi[i]!]) {
        if (best.at[i] === end) continue;
        const at = best.at.slice();
        at[i] = end;
        const value = sense * f.value(at);
        if (value > best.value) [best, better] = [{ at, value }, true];
      }
    }
    if (!better) break;
  }
  return best;
}
