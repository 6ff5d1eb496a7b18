import type { Interval } from '../../expression/interval.ts';
import { range } from '../../expression/ranges.ts';
import type { BoardFunction } from './function.ts';

/** Parts of a box that are looked at before it is taken for granted that the function leaves its domain somewhere. */
const budget = 512;

/**
 * Whether a function has a value, and stays on its curves, everywhere in a box. An enclosure may be unsure only because it is
 * wide, so the box is cut until each part is certain; what stays unsure to the end counts as left.
 */
export function definedOver(f: BoardFunction, box: readonly Interval[]): boolean {
  const open: (readonly Interval[])[] = [box];
  for (let looked = 0; open.length > 0; looked++) {
    const part = open.pop()!;
    if (f.range(part).certain) continue;
    const at = widest(part, box);
    if (looked >= budget || at < 0) return false;
    const { lo, hi } = part[at]!;
    const middle = lo + (hi - lo) / 2;
    open.push(part.with(at, range(lo, middle)), part.with(at, range(middle, hi)));
  }
  return true;
}

/** The variable that has been cut least, compared to its whole range; −1 when none can be cut. */
function widest(part: readonly Interval[], whole: readonly Interval[]): number {
  let found = -1;
  let most = 0;
  for (const [i, { lo, hi }] of part.entries()) {
    const middle = lo + (hi - lo) / 2;
    const share = (hi - lo) / (whole[i]!.hi - whole[i]!.lo);
    if (lo < middle && middle < hi && share > most) [found, most] = [i, share];
  }
  return found;
}
