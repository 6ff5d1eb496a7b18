import { summarise } from '../statistics.ts';

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
const bins = 40;

/** Sorts `values` in place. */
export function spreadOf(values: Float64Array): Spread {
  const { mean, sd, min, max } = summarise(values);
  values.sort();
  const counts = new Array<number>(bins).fill(0);
  const scale = max > min ? bins / (max - min) : 0;
  for (const x of values) counts[Math.min(bins - 1, Math.floor((x - min) * scale))]!++;
  return {
    mean,
    sd,
    quantiles: quantileChances.map((p) => quantile(values, p)),
    histogram: { from: min, to: max, counts },
  };
}

/**
 * Sample quantile, linear between order statistics at (n − 1)·p.
 * Source: R. J. Hyndman, Y. Fan, The American Statistician 50 (1996) 361–365, definition 7.
 */
export function quantile(sorted: ArrayLike<number>, p: number): number {
  const at = (sorted.length - 1) * p;
  const below = Math.floor(at);
  const a = sorted[below]!;
  const b = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return a + (b - a) * (at - below);
}
