import { halves } from './branch-and-bound.ts';
import type { BoardFunction, Ends } from './function.ts';

/** Parts of a box that are looked at before it is taken for granted that the function leaves its domain somewhere. */
const budget = 512;

/**
 * Whether a function has a value, and stays on its curves, everywhere in a box. An enclosure may be unsure only because it is
 * wide, so the box is cut until each part is certain; what stays unsure to the end counts as left.
 */
export function definedOver(f: BoardFunction, box: Ends): boolean {
  const open: Ends[] = [box];
  for (let looked = 0; open.length > 0; looked++) {
    const part = open.pop()!;
    if (f.range(part).certain) continue;
    const at = widest(part, box);
    if (looked >= budget || at < 0) return false;
    open.push(...halves(part, at));
  }
  return true;
}

/** The variable that has been cut least, compared to its whole range; −1 when none can be cut. */
function widest(part: Ends, whole: Ends): number {
  let found = -1;
  let most = 0;
  for (let i = 0; i < part.lo.length; i++) {
    const [lo, hi] = [part.lo[i]!, part.hi[i]!];
    const middle = lo + (hi - lo) / 2;
    const share = (hi - lo) / (whole.hi[i]! - whole.lo[i]!);
    if (lo < middle && middle < hi && share > most) [found, most] = [i, share];
  }
  return found;
}
