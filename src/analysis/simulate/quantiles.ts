/** ±3, ±1.96 standard deviations of a normal, and the middle. */
export const quantileChances = [0.00135, 0.025, 0.5, 0.975, 0.99865] as const;

/** Where a quantile stands between two order statistics: the lower one's rank from 0, and how far on to the next. */
export interface Place {
  readonly rank: number;
  readonly part: number;
}

/**
 * Places of the quantiles of n values, linear between order statistics at (n − 1)·p.
 * Source: R. J. Hyndman, Y. Fan, The American Statistician 50 (1996) 361–365, definition 7.
 */
export function quantilePlaces(n: number): Place[] {
  return quantileChances.map((p) => {
    const at = (n - 1) * p;
    return { rank: Math.floor(at), part: at - Math.floor(at) };
  });
}

/** Ranks of the order statistics that the quantiles of n values need, rising. */
export function neededRanks(n: number): number[] {
  return quantilePlaces(n).flatMap(({ rank }) => [rank, Math.min(rank + 1, n - 1)]);
}

/** The quantiles of n values, from the order statistics at `neededRanks(n)`. */
export function quantilesFrom(statistics: readonly number[], n: number): number[] {
  // Adding 0 makes a zero without sign of one with it: which comes first is chance.
  return quantilePlaces(n).map(({ part }, i) => {
    const [a, b] = [statistics[2 * i]!, statistics[2 * i + 1]!];
    return a + (b - a) * part + 0;
  });
}
