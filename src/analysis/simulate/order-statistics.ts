import { before, binAt } from './brackets.ts';

/**
 * Bins between the least and the greatest value: few enough to stay in the cache, many enough to leave little to sort.
 */
const bins = 4096;

/**
 * The values that stand at the given ranks of a sample in order, without sorting it: values are counted into bins, and
 * only those in a bin that holds a wanted rank are gathered and sorted. Exact.
 * @param values  numbers, none of them NaN, of which the least and the greatest are given
 * @param ranks  whole numbers from 0 to n − 1
 */
export function orderStatistics(values: Float64Array, min: number, max: number, ranks: readonly number[]): number[] {
  if (!(max > min)) return ranks.map(() => min);
  const scale = bins / (max - min);
  // Ranges too wide or too narrow for the arithmetic of bins.
  if (!(scale > 0 && Number.isFinite(scale))) return sorted(values, ranks);
  const binOf = (x: number) => Math.min(bins - 1, Math.floor((x - min) * scale));
  const counts = new Uint32Array(bins);
  for (let i = 0; i < values.length; i++) counts[binOf(values[i]!)]!++;
  const below = before(counts);
  const parts = new Map<number, Float64Array>();
  return ranks.map((rank) => {
    const bin = binAt(below, rank);
    const part = parts.get(bin) ?? gather(values, counts[bin]!, (x) => binOf(x) === bin);
    parts.set(bin, part);
    return part[rank - below[bin]!]!;
  });
}

function gather(values: Float64Array, count: number, wanted: (x: number) => boolean): Float64Array {
  const part = new Float64Array(count);
  let at = 0;
  for (let i = 0; i < values.length && at < count; i++) if (wanted(values[i]!)) part[at++] = values[i]!;
  return part.sort();
}

function sorted(values: Float64Array, ranks: readonly number[]): number[] {
  const all = values.toSorted();
  return ranks.map((rank) => all[rank]!);
}
