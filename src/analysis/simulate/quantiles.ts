/** ±3, ±1.96 standard deviations of a normal, and the middle. */
export const quantileChances = [0.00135, 0.025, 0.5, 0.975, 0.99865] as const;

/** Where a quantile stands between two order statistics: the lower one's rank from 0, and how far on to the next. */
export interface Place {
  readonly rank: number;
  readonly part: number;
  /** Ranks between which the quantile of endless boards lies with 95 % confidence. */
  readonly least: number;
  readonly greatest: number;
}

/** Standard deviations of a normal number that hold 95 % of it on both sides together. */
const confident = 1.959964;

/**
 * Places of the quantiles of n values, linear between order statistics at (n − 1)·p, and of their confidence limits, for
 * which no distribution need be known: the number of values below the true quantile is binomial.
 * Source: R. J. Hyndman, Y. Fan, The American Statistician 50 (1996) 361–365, definition 7. W. J. Conover, Practical
 * Nonparametric Statistics, 3rd ed. (1999), 3.2, for the limits (normal approximation, rounded outward); from memory.
 */
export function quantilePlaces(n: number): Place[] {
  return quantileChances.map((p) => {
    const at = (n - 1) * p;
    const reach = confident * Math.sqrt(n * p * (1 - p));
    return {
      rank: Math.floor(at),
      part: at - Math.floor(at),
      least: Math.max(0, Math.floor(n * p - reach) - 1),
      greatest: Math.min(n - 1, Math.ceil(n * p + reach)),
    };
  });
}

/** Ranks of the order statistics that the quantiles of n values need: four for each. */
export function neededRanks(n: number): number[] {
  return quantilePlaces(n).flatMap(({ rank, least, greatest }) => [rank, Math.min(rank + 1, n - 1), least, greatest]);
}

export interface Quantiles {
  /** At the chances of `quantileChances`, in that order. */
  readonly quantiles: readonly number[];
  /** For each its 95 % confidence interval: what another set of boards might have given. */
  readonly within: readonly (readonly [least: number, greatest: number])[];
}

/** The quantiles of n values, from the order statistics at `neededRanks(n)`. */
export function quantilesFrom(statistics: readonly number[], n: number): Quantiles {
  const places = quantilePlaces(n);
  return {
    // Adding 0 makes a zero without sign of one with it: which comes first is chance.
    quantiles: places.map(({ part }, i) => {
      const [a, b] = [statistics[4 * i]!, statistics[4 * i + 1]!];
      return a + (b - a) * part + 0;
    }),
    within: places.map((_, i) => [statistics[4 * i + 2]! + 0, statistics[4 * i + 3]! + 0]),
  };
}
