import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Search } from '../../../src/analysis/worst-case/extremes.ts';
import { BoardFunction } from '../../../src/analysis/worst-case/function.ts';
import { boxes, expressions } from '../../expression/arbitrary.ts';
import { tapeOf } from '../../expression/tapes.ts';

test('random expressions: no point of the box lies beyond the bound; what is proven agrees with it to 1e-6', () => {
  let [proven, open] = [0, 0];
  fc.assert(
    fc.property(expressions, boxes(8), (tree, { box, points }) => {
      const { tape, output } = tapeOf(tree);
      const f = new BoardFunction(tape, output);
      const whole = { lo: Float64Array.from(box, ({ lo }) => lo), hi: Float64Array.from(box, ({ hi }) => hi) };
      const typical = Float64Array.from(points[0]!);
      const search = new Search(f, [whole], typical, { tolerance: 1e-6, budget: 200 });
      const [min, max] = [search.min(), search.max()];
      const values = points
        .map((at) => f.value(Float64Array.from(f.variables, (v) => at[v]!)))
        .filter((value) => Number.isFinite(value));
      // A division by zero or an overflow on the way gives values that belong to no number.
      if (!min.certain || !max.certain) return;
      for (const value of values) {
        expect(value).toBeGreaterThanOrEqual(min.bound);
        expect(value).toBeLessThanOrEqual(max.bound);
      }
      if (!Number.isFinite(max.value - min.value)) return;
      const blur = 1e-13 * Math.max(Math.abs(min.value), Math.abs(max.value));
      for (const { value, bound, proven: closed } of [min, max]) {
        if (closed) expect(Math.abs(value - bound)).toBeLessThanOrEqual(2e-6 * (max.value - min.value) + blur);
        closed ? proven++ : open++;
      }
    }),
    { numRuns: 10_000 },
  );
  // Had nothing been proven, this test would have said nothing.
  expect(proven / (proven + open)).toBeGreaterThan(0.9);
});
