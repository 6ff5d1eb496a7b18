import { expect, test } from 'vitest';
import { clopperPearson } from '../../src/analysis/statistics.ts';

// The published figures are held in src/published/data/statistics.yaml; here stand the inequalities.

test.each([10, 30, 100, 1000, 100_000])(
  'PRB-05: no failure in %d bounds the fraction by about 3/n, and never by more',
  (n) => {
    const { high } = clopperPearson(0, n, 0.95);
    expect(high).toBeLessThan(3 / n);
    expect(high).toBeGreaterThan((0.85 * 3) / n);
  },
);

test.each([
  [0.95, 59],
  [0.99, 299],
  [0.999, 2995],
])('a content of %d at 95 % takes %d trials without failure, and not one fewer', (content, n) => {
  expect(clopperPearson(0, n, 0.95).high).toBeLessThanOrEqual(1 - content);
  expect(clopperPearson(0, n - 1, 0.95).high).toBeGreaterThan(1 - content);
});
