import { expect, test } from 'vitest';
import { clopperPearson } from '../../../src/analysis/statistics.ts';

// Ends p of the interval solve P(X ≥ hits) = 2.5 % and P(X ≤ hits) = 2.5 % for X of n boards (recomputed: sums of binomial terms to
// fifty digits, solved to eighteen).
test.each([
  [7, 100_000, 2.8144078805037e-5, 0.00014422140092235],
  [250, 100_000, 0.0021999994964279, 0.0028294100598734],
  [99_000, 100_000, 0.98936388847065, 0.9906074439109],
  [3, 1_000_000, 6.1867255019064e-7, 8.7672477881452e-6],
  [1350, 1_000_000, 0.0012789829255751, 0.0014239300752547],
  [400_000, 1_000_000, 0.39903960843253, 0.40096097082778],
])('%d failures in %d boards: the interval to 1e-10', (hits, trials, low, high) => {
  const found = clopperPearson(hits, trials);
  expect(Math.abs(found.low / low - 1)).toBeLessThan(1e-10);
  expect(Math.abs(found.high / high - 1)).toBeLessThan(1e-10);
});

test.each([100_000, 1_000_000])('none in %d: 1 − 0.05^(1/n), to 1e-10', (trials) => {
  const exact = -Math.expm1(Math.log(0.05) / trials);
  expect(Math.abs(clopperPearson(0, trials).high / exact - 1)).toBeLessThan(1e-10);
  expect(clopperPearson(trials, trials).low).toBeCloseTo(1 - exact, 15);
});
