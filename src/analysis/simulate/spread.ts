import { summarise } from '../statistics.ts';
import { orderStatistics } from './order-statistics.ts';

/** What the simulated boards say of one target. SI base units. */
export interface Spread {
  readonly mean: number;
  readonly sd: number;
  /** At the chances of `quantileChances`, in that order. */
  readonly quantiles: readonly number[];
  readonly histogram: { readonly from: number; readonly to: number; readonly counts: readonly number[] };
}

/** ±3, ±1.96 standard deviations of a normal, and the middle. */
export const quantileChances = [0.00135, 0.025, 0.5, 0.975, 0.99865] as const;
const bars = 40;

export function spreadOf(values: Float64Array): Spread {
  const { mean, sd, min, max } = summarise(values);
  return {
    mean,
    sd,
    quantiles: quantilesOf(values, min, max),
    histogram: { from: min, to: max, counts: countsOf(values, min, max) },
  };
}

/**
 * Sample quantiles, linear between order statistics at (n − 1)·p.
 * Source: R. J. Hyndman, Y. Fan, The American Statistician 50 (1996) 361–365, definition 7.
 */
function quantilesOf(values: Float64Array, min: number, max: number): number[] {
  const last = values.length - 1;
  const places = quantileChances.map((p) => last * p);
  const ranks = places.flatMap((at) => [Math.floor(at), Math.min(Math.floor(at) + 1, last)]);
  const found = orderStatistics(values, min, max, ranks);
  return places.map((at, i) => found[2 * i]! + (found[2 * i + 1]! - found[2 * i]!) * (at - Math.floor(at)));
}

function countsOf(values: Float64Array, min: number, max: number): number[] {
  const counts = new Array<number>(bars).fill(0);
  const scale = max > min ? bars / (max - min) : 0;
  for (let i = 0; i < values.length; i++) counts[Math.min(bars - 1, Math.floor((values[i]! - min) * scale))]!++;
  return counts;
}
