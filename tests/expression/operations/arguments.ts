import fc from 'fast-check';
import type { Interval } from '../../../src/expression/interval.ts';
import type { OperationName } from '../../../src/expression/operations/index.ts';
import { rangeWithPoints } from '../arbitrary.ts';

/** Ranges for the arguments of an operation, and three points within them. */
export interface Arguments {
  readonly ranges: Interval[];
  readonly points: readonly [number[], number[], number[]];
}

type Side = { range: Interval; points: number[] };

const ordinary = rangeWithPoints(3);
const positive = rangeWithPoints(3, 0, 10);
const fixed = (value: number): Side => ({
  range: { lo: value, hi: value, certain: true },
  points: [value, value, value],
});
const truth: fc.Arbitrary<Side> = fc.oneof(
  fc.constantFrom(0, 1).map(fixed),
  fc
    .array(fc.constantFrom(0, 1), { minLength: 3, maxLength: 3 })
    .map((points) => ({ range: { lo: 0, hi: 1, certain: true }, points })),
);
const exponent = fc.oneof(
  fc.integer({ min: -4, max: 5 }).map(fixed),
  fc.constantFrom(0.5, 1.5, -0.5).map(fixed),
  rangeWithPoints(3, -3, 3),
);

const points = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: -10, max: 20 }), { minLength: 2, maxLength: 4 }),
    fc.array(ordinary, { minLength: 4, maxLength: 4 }),
  )
  .map(([xs, ys]) => xs.sort((a, b) => a - b).flatMap((x, i) => [fixed(x), ys[i]!]));

/** What an operation takes where it does not take any two numbers. */
const SPECIAL: Partial<Record<OperationName, fc.Arbitrary<readonly Side[]>>> = {
  if: fc.tuple(truth, ordinary, ordinary),
  and: fc.tuple(truth, truth),
  or: fc.tuple(truth, truth),
  not: fc.tuple(truth),
  power: fc.tuple(fc.oneof(ordinary, positive), exponent),
  parallel: fc.oneof(fc.tuple(positive, positive), fc.tuple(ordinary, ordinary)),
  share: fc.oneof(fc.tuple(positive, positive), fc.tuple(ordinary, ordinary)),
  interp: fc.tuple(ordinary, points).map(([x, rest]) => [x, ...rest]),
};

export function argumentsOf(name: OperationName, count: number): fc.Arbitrary<Arguments> {
  const sides: fc.Arbitrary<readonly Side[]> =
    SPECIAL[name] ?? fc.array(ordinary, { minLength: count, maxLength: count });
  return sides.map((all) => {
    const at = (k: number): number[] => all.map((side) => side.points[k]!);
    return { ranges: all.map(({ range }) => range), points: [at(0), at(1), at(2)] };
  });
}
