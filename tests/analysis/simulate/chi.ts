/**
 * How many deviations a chi-square sum is from its mean, for counts that should be equal; near normal for many cells.
 */
export function unevenness(counts: ArrayLike<number>): number {
  const cells = counts.length;
  let total = 0;
  for (let i = 0; i < cells; i++) total += counts[i]!;
  const expected = total / cells;
  let sum = 0;
  for (let i = 0; i < cells; i++) sum += (counts[i]! - expected) ** 2 / expected;
  return (sum - (cells - 1)) / Math.sqrt(2 * (cells - 1));
}
