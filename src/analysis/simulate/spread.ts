import { summarise } from '../statistics.ts';
import { orderStatistics } from './order-statistics.ts';
import { neededRanks, type Quantiles, quantilesFrom } from './quantiles.ts';

/** What the simulated boards say of one target. SI base units. */
export interface Spread extends Quantiles {
  readonly mean: number;
  readonly sd: number;
  /**
   * Boards in bars of equal width; the least and the greatest value lie in the first and the last, or close to them.
   */
  readonly histogram: { readonly from: number; readonly to: number; readonly counts: readonly number[] };
}

export const bars = 40;

/** The spread of values that are all at hand. */
export function spreadOf(values: Float64Array): Spread {
  const { mean, sd, min, max } = summarise(values);
  if (!Number.isFinite(sd)) return pointSpread(Number.NaN, values.length);
  const statistics = orderStatistics(values, min, max, neededRanks(values.length));
  return {
    mean,
    sd,
    ...quantilesFrom(statistics, values.length),
    histogram: { from: min, to: max, counts: countsOf(values, min, max) },
  };
}

/**
 * The spread of a result that no part moves; of NaN, where some board has no value: neither has a mean, nor what
 * follows.
 */
export function pointSpread(value: number, trials: number): Spread {
  const counts = Array.from({ length: bars }, (_, i) => (i === 0 ? trials : 0));
  return {
    mean: value,
    sd: value - value,
    ...quantilesFrom(
      neededRanks(trials).map(() => value),
      trials,
    ),
    histogram: { from: value, to: value, counts },
  };
}

function countsOf(values: Float64Array, min: number, max: number): number[] {
  const counts = new Array<number>(bars).fill(0);
  const width = max - min;
  // By dividing, not by multiplying with the inverse, which the narrowest ranges do not have.
  for (let i = 0; i < values.length; i++)
    counts[Math.min(bars - 1, width > 0 ? Math.floor(((values[i]! - min) / width) * bars) : 0)]!++;
  return counts;
}
