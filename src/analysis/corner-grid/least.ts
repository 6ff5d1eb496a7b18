import type { Box } from '../worst-case/box.ts';
import { climb } from '../worst-case/corner.ts';
import { type Extreme, Search } from '../worst-case/extremes.ts';
import type { BoardFunction } from '../worst-case/function.ts';
import { monotoneEnds } from '../worst-case/monotone.ts';

/** A margin is printed to a tenth of a per cent; the proof over all corners together stands behind every cell. */
export const search = { tolerance: 1e-4, budget: 200 };

/** Finds where a slack is least over some boxes. */
export type Least = (f: BoardFunction, boxes: readonly Box[], start: Float64Array) => Found;
export type Found = Pick<Extreme, 'value' | 'bound' | 'at'>;

/** Where slopes lead; to choose by, and no proof. */
export const cornersAlone: Least = (f, boxes, start) => {
  const found = boxes.map((box) => {
    const { lo, hi } = f.argumentsOf(box);
    const inside = lo.map((low, i) => Math.min(Math.max(start[f.variables[i]!]!, low), hi[i]!));
    return climb(f, lo, hi, inside, -1);
  });
  const best = found.reduce((a, b) => (b.value > a.value ? b : a));
  return { value: -best.value, bound: Number.NEGATIVE_INFINITY, at: spread(f, start, best.at) };
};

export const provenLeast: Least = (f, boxes, start) => {
  const ends = monotoneEnds(f, boxes);
  if (!ends) return new Search(f, boxes, start, search).min();
  return { value: ends.min.value, bound: ends.min.value, at: spread(f, start, ends.min.at) };
};

/** A point of a function as one of all variables of the board. */
function spread(f: BoardFunction, start: Float64Array, at: Float64Array): Float64Array {
  const all = start.slice();
  f.variables.forEach((v, i) => {
    all[v] = at[i]!;
  });
  return all;
}
