import { Sum } from '../statistics.ts';
import { before, binAt } from './brackets.ts';
import type { Counts, OutputCounts } from './counts.ts';
import { binOf, bins, type Grid } from './grid.ts';
import { barsOver } from './histogram.ts';
import { neededRanks, type Quantiles, quantilesFrom } from './quantiles.ts';
import { selected } from './select.ts';
import { pointSpread, type Spread } from './spread.ts';

export interface Merged {
  /** For each output; undefined where its quantiles could not be told from what was kept. */
  readonly spreads: readonly (Spread | undefined)[];
  readonly failures: readonly number[];
  readonly failed: number;
}

/** Puts together what was counted on all chunks, by however many runs. The same bits however they shared the chunks. */
export function merged(counts: readonly Counts[], trials: number): Merged {
  const sums = sumsOf(counts);
  const outputs = counts[0]!.outputs.map((_, k) => together(counts.map(({ outputs }) => outputs[k]!)));
  return {
    spreads: outputs.map((output, k) => spreadFrom(output, sums[2 * k]!, sums[2 * k + 1]!, trials)),
    failures: outputs.map(({ failures }) => failures),
    failed: counts.reduce((sum, { failed }) => sum + failed, 0),
  };
}

/** Sums over all chunks, in the order of their numbers. */
function sumsOf(counts: readonly Counts[]): number[] {
  const chunks = counts
    .flatMap(({ chunks, sums }) => chunks.map((index, i) => ({ index, sums: sums[i]! })))
    .sort((a, b) => a.index - b.index);
  return Array.from(chunks[0]!.sums, (_, i) => {
    const sum = new Sum();
    for (const { sums } of chunks) sum.add(sums[i]!);
    return sum.value;
  });
}

function together(parts: readonly OutputCounts[]): OutputCounts {
  const first = parts[0]!;
  if (parts.length === 1) return first;
  return {
    grid: first.grid,
    shift: first.shift,
    min: Math.min(...parts.map(({ min }) => min)),
    max: Math.max(...parts.map(({ max }) => max)),
    failures: parts.reduce((sum, { failures }) => sum + failures, 0),
    bins: first.bins.map((_, bin) => parts.reduce((sum, part) => sum + part.bins[bin]!, 0)),
    flags: first.flags.map((_, bin) => (parts.every(({ flags }) => flags[bin]) ? 1 : 0)),
    kept: parts.flatMap(({ kept }) => kept),
  };
}

function spreadFrom(output: OutputCounts, sum: number, squares: number, trials: number): Spread | undefined {
  const { grid, shift, min, max } = output;
  const mean = shift + sum / trials;
  const variance = trials > 1 ? (squares - sum ** 2 / trials) / (trials - 1) : squares;
  if (!Number.isFinite(variance)) return pointSpread(Number.NaN, trials);
  if (min === max) return pointSpread(min, trials);
  const quantiles = grid && quantilesOf(output, grid, trials);
  const histogram = grid && quantiles && barsOver(output, grid);
  if (!quantiles || !histogram) return undefined;
  return { mean, sd: Math.sqrt(Math.max(0, variance)), ...quantiles, histogram };
}

function quantilesOf({ bins: counts, flags, kept }: OutputCounts, grid: Grid, trials: number): Quantiles | undefined {
  const below = before(counts);
  const ranks = neededRanks(trials);
  const holding = ranks.map((rank) => binAt(below, rank));
  if (holding.some((bin) => !flags[bin])) return undefined;
  const values = valuesIn(holding, kept, grid, counts);
  const statistics = ranks.map((rank, i) => {
    const bin = holding[i]!;
    return selected(values.get(bin)!, counts[bin]!, rank - below[bin]!);
  });
  return quantilesFrom(statistics, trials);
}

/** The kept values that fall in the given bins. */
function valuesIn(
  wanted: readonly number[],
  kept: readonly Float64Array[],
  grid: Grid,
  counts: Uint32Array,
): Map<number, Float64Array> {
  const found = new Map([...new Set(wanted)].map((bin) => [bin, new Float64Array(counts[bin]!)]));
  const lists = [...found.values()];
  const listOf = new Int8Array(bins).fill(-1);
  [...found.keys()].forEach((bin, i) => {
    listOf[bin] = i;
  });
  const filled = new Uint32Array(lists.length);
  for (const values of kept) {
    for (let i = 0; i < values.length; i++) {
      const list = listOf[binOf(grid, values[i]!)]!;
      if (list >= 0) lists[list]![filled[list]!++] = values[i]!;
    }
  }
  return found;
}
