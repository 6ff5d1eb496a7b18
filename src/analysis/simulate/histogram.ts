import type { OutputCounts } from './counts.ts';
import { binOf, bins, edgeOf, farBin, type Grid } from './grid.ts';
import { bars, type Spread } from './spread.ts';

/**
 * The histogram from what was counted into the bins of the grid: each bar takes as many whole bins, so that it is
 * exact. Values beyond the grid stand together in its end bins and are told apart by those that were kept.
 * @returns undefined where values beyond the grid were not kept
 */
export function barsOver(
  { bins: counts, flags, kept, min, max }: OutputCounts,
  grid: Grid,
): Spread['histogram'] | undefined {
  const [low, high] = [farBin(grid, min), farBin(grid, max)];
  const width = Math.max(1, Math.ceil((high - low + 1) / bars));
  const first = low - Math.floor((bars * width - (high - low + 1)) / 2);
  const result = Array.from({ length: bars }, (_, bar) => {
    const end = Math.min(bins - 1, first + (bar + 1) * width);
    let sum = 0;
    for (let bin = Math.max(1, first + bar * width); bin < end; bin++) sum += counts[bin]!;
    return sum;
  });
  const barOf = (bin: number): number => Math.min(bars - 1, Math.max(0, Math.floor((bin - first) / width)));
  for (const bin of [0, bins - 1]) {
    const beyond = bin === 0 ? low < 0 : high > bins - 1;
    if (!beyond) result[barOf(bin)]! += counts[bin]!;
    else if (!flags[bin]) return undefined;
    else
      for (const values of kept) for (const x of values) if (binOf(grid, x) === bin) result[barOf(farBin(grid, x))]!++;
  }
  return { from: edgeOf(grid, first), to: edgeOf(grid, first + bars * width), counts: result };
}
