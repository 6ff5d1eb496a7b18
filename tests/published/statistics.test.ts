import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { betaQuantile, clopperPearson, normalQuantile, summarise } from '../../src/analysis/statistics.ts';

interface NistSet {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  readonly mean: number;
  readonly sd: number;
  readonly values: readonly number[];
}
const nist: NistSet[] = JSON.parse(readFileSync(new URL('./data/nist-univariate.json', import.meta.url), 'utf8'));

/** Within a share of the value. */
function near(got: number, wanted: number, share: number): void {
  expect(Math.abs(got - wanted), `${got} instead of ${wanted}`).toBeLessThanOrEqual(share * Math.abs(wanted));
}

// NIST Statistical Reference Datasets, univariate summary statistics: certified mean and standard deviation (read).
describe('certified data sets', () => {
  test.each(nist)('$id $name', ({ values, mean, sd }) => {
    const summary = summarise(Float64Array.from(values));
    near(summary.mean, mean, 1e-14);
    near(summary.sd, sd, 1e-9);
  });

  // One value of base + 0.2, then 500 pairs of base + 0.1 and base + 0.3: mean base + 0.2, deviation 0.1 exactly.
  const paired = (base: number): Float64Array => {
    const [low, middle, high] = [0.1, 0.2, 0.3].map((step) => Number((base + step).toFixed(1)));
    return Float64Array.from([middle!, ...Array.from({ length: 500 }, () => [low!, high!]).flat()]);
  };
  test.each([
    ['STA-07 NumAcc2', 1, 1e-12],
    // The decimal numbers cannot be held exactly at this size: even exact sums over what is held leave 5.6e-9.
    ['STA-09 NumAcc4', 1e7, 2e-8],
  ])('%s', (_, base, share) => {
    const summary = summarise(paired(base));
    near(summary.mean, base + 0.2, 1e-14);
    near(summary.sd, 0.1, share);
  });
});

// PRB-01. Tables of the standard normal distribution (recomputed to full precision).
test.each([
  [0.9, 1.2815515655446004],
  [0.95, 1.6448536269514722],
  [0.975, 1.959963984540054],
  [0.99, 2.3263478740408408],
  [0.995, 2.5758293035489004],
  [0.999, 3.090232306167813],
  [0.9999, 3.719016485455709],
  [0.99865, 2.9999769927034015],
])('PRB-01: the %d quantile of the standard normal distribution', (p, z) => {
  near(normalQuantile(p), z, 1e-9);
  near(normalQuantile(1 - p), -z, 1e-9);
});

// PRB-03. NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1: 4 defects in 20, 90 % two-sided (read).
describe('PRB-03: exact interval for 4 defects in 20', () => {
  test('as printed', () => {
    const { estimate, low, high } = clopperPearson(4, 20, 0.9);
    expect(estimate).toBe(0.2);
    expect(Math.abs(low - 0.071354)).toBeLessThanOrEqual(5e-6);
    expect(Math.abs(high - 0.401029)).toBeLessThanOrEqual(2e-6);
  });
  test('its ends are quantiles of the beta distribution', () => {
    near(betaQuantile(0.05, 4, 17), 0.0713538, 2e-6);
    near(betaQuantile(0.95, 5, 16), 0.4010281, 2e-6);
  });
});

// PRB-05. No failure in n: the one-sided bound is 1 - 0.05^(1/n) exactly, about 3/n (recomputed).
test.each([
  [10, 0.2588655493],
  [30, 0.0950338674],
  [100, 0.0295130476],
  [1000, 0.0029912497],
  [100_000, 2.99568e-5],
])('PRB-05: no failure in %d', (n, bound) => {
  const { estimate, low, high } = clopperPearson(0, n, 0.95);
  expect(estimate).toBe(0);
  expect(low).toBe(0);
  near(high, bound, 1e-5);
  expect(high).toBeLessThan(3 / n);
  expect(high).toBeGreaterThan((0.85 * 3) / n);
});

// Content and confidence without failure (distribution-free): the n of published tolerance tables (recomputed).
test.each([
  [0.95, 0.95, 59],
  [0.99, 0.95, 299],
  [0.999, 0.95, 2995],
])('%d content at %d confidence takes %d trials without failure', (content, confidence, n) => {
  expect(clopperPearson(0, n, confidence).high).toBeLessThanOrEqual(1 - content);
  expect(clopperPearson(0, n - 1, confidence).high).toBeGreaterThan(1 - content);
});
