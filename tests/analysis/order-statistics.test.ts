import fc from 'fast-check';
import { expect, test } from 'vitest';
import { orderStatistics } from '../../src/analysis/simulate/order-statistics.ts';

test('ranks are those of the sorted sample', () => {
  const samples = fc.array(
    fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.constantFrom(0, 1, 1 + 2 ** -52, -1)),
    { minLength: 1, maxLength: 300 },
  );
  fc.assert(
    fc.property(
      samples,
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 6 }),
      (sample, places) => {
        const values = Float64Array.from(sample);
        const ranks = places.map((p) => Math.floor(p * (values.length - 1))).sort((a, b) => a - b);
        const sorted = values.toSorted();
        expect(orderStatistics(values, sorted[0]!, sorted.at(-1)!, ranks)).toEqual(ranks.map((rank) => sorted[rank]!));
      },
    ),
    { numRuns: 2000 },
  );
});
