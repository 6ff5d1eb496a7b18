import { betaQuantile } from './beta.ts';

/** A fraction of boards as estimated from simulated ones, with the interval in which the true one lies. */
export interface Fraction {
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Clopper–Pearson interval for a fraction, from `hits` in `trials`. Exact: holds the true fraction with at least the
 * confidence stated. With no hit (or all hits) the interval is one-sided, so 0 of 100 000 gives "at most 30 ppm at 95
 * %".
 * Source: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404–413; the one-sided end is the "rule of three".
 */
export function clopperPearson(hits: number, trials: number, confidence = 0.95): Fraction {
  const alpha = 1 - confidence;
  const tail = hits === 0 || hits === trials ? alpha : alpha / 2;
  return {
    estimate: hits / trials,
    low: hits === 0 ? 0 : betaQuantile(tail, hits, trials - hits + 1),
    high: hits === trials ? 1 : betaQuantile(1 - tail, hits + 1, trials - hits),
  };
}
