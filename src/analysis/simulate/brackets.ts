import { bins } from './grid.ts';
import { quantilePlaces } from './quantiles.ts';

/**
 * How many deviations of a rank's chance error are allowed for: one bracket in 150 000 is missed, and sought once more.
 */
const allowed = 4.5;

/**
 * Marks the bins that may hold the order statistics which the quantiles need: values that fall there must be kept.
 * @param counts  boards in each bin, of those seen so far
 * @param seen  their number, of `trials` in all
 */
export function bracketed(counts: Uint32Array, seen: number, trials: number): Uint8Array {
  const flags = new Uint8Array(bins);
  const below = before(counts);
  for (const { rank, least, greatest } of quantilePlaces(trials)) {
    const [low, high] =
      seen === trials
        ? [Math.min(rank, least), Math.max(rank + 1, greatest)]
        : [around(least / trials, seen, trials)[0], around(greatest / trials, seen, trials)[1]];
    // A rank that may be outermost of those seen may well lie further out than any of them.
    const first = low < 0 ? 0 : binAt(below, low);
    const last = high >= seen ? bins - 1 : binAt(below, high);
    flags.fill(1, first, last + 1);
  }
  // Values beyond the grid must be told apart for the histogram.
  flags[0] = flags[bins - 1] = 1;
  return flags;
}

/** Ranks among the boards seen, between which the share `p` of all boards lies, and the board next to it. */
function around(p: number, seen: number, trials: number): [low: number, high: number] {
  // Boards seen are among all boards: the more were seen, the less they can be off.
  const deviation = seen * Math.sqrt(p * (1 - p) * (1 / seen - 1 / trials));
  const margin = allowed * deviation + 3;
  return [p * seen - margin, (p + 1 / trials) * seen + margin];
}

/** For each bin the boards in the bins before it, and last the boards in all. */
export function before(counts: Uint32Array): Uint32Array {
  const below = new Uint32Array(counts.length + 1);
  for (let bin = 0; bin < counts.length; bin++) below[bin + 1] = below[bin]! + counts[bin]!;
  return below;
}

/** The bin that holds the board of a rank, counted from 0; the nearest with boards in it where the rank is none. */
export function binAt(below: Uint32Array, rank: number): number {
  const held = Math.min(Math.max(0, Math.floor(rank)), below.at(-1)! - 1);
  let [low, high] = [0, below.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (below[middle]! <= held) low = middle;
    else high = middle;
  }
  return low;
}
