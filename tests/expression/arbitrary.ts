import fc from 'fast-check';
import type { Interval } from '../../src/expression/interval.ts';
import type { Tree } from '../../src/expression/tree.ts';

/** Names that random expressions are made of. */
export const names = ['a', 'b', 'c', 'd'] as const;

const nowhere = { start: 0, end: 0 };
export const call = (operation: string, ...args: Tree[]): Tree => ({ kind: 'call', operation, args, at: nowhere });
export const symbol = (name: string): Tree => ({ kind: 'symbol', name, at: nowhere });
export const number = (value: number): Tree => ({ kind: 'number', value, text: String(value), at: nowhere });

/** Numbers as people type them: a few digits, no sign. */
const typed = fc
  .oneof(
    fc.integer({ min: 0, max: 12 }),
    fc.integer({ min: 1, max: 999 }).map((n) => n / 100),
  )
  .map(number);

const one = ['negate', 'sqrt', 'square', 'abs', 'exp', 'ln', 'log10', 'log2', 'sin', 'cos', 'tan', 'atan'];
const stairs = ['floor', 'ceil', 'round'];
const two = ['add', 'subtract', 'multiply', 'divide', 'add', 'subtract', 'multiply', 'divide', 'share', 'atan2'];
const several = ['min', 'max', 'sum', 'hypot', 'parallel'];
const compare = ['less', 'lessEqual', 'greater', 'greaterEqual'];

/** Points of a curve: x ascending and typed, y anything. */
const curve = (x: fc.Arbitrary<Tree>, y: fc.Arbitrary<Tree>): fc.Arbitrary<Tree> =>
  fc
    .tuple(
      x,
      fc.uniqueArray(fc.integer({ min: 0, max: 20 }), { minLength: 2, maxLength: 4 }),
      fc.array(y, { minLength: 4, maxLength: 4 }),
    )
    .map(([at, xs, ys]) => call('interp', at, ...xs.sort((p, q) => p - q).flatMap((p, i) => [number(p), ys[i]!])));

/**
 * Random expressions over `names`, with every operation; pure numbers throughout, so that all combinations have a
 * dimension. Many of them have no value somewhere.
 */
export const expressions: fc.Arbitrary<Tree> = fc.letrec<{ tree: Tree; truth: Tree }>((tie) => {
  const tree = tie('tree');
  const truth = tie('truth');
  const leaf = fc.oneof({ arbitrary: fc.constantFrom(...names).map(symbol), weight: 3 }, typed);
  return {
    tree: fc.oneof(
      { maxDepth: 5, withCrossShrink: true },
      { arbitrary: leaf, weight: 3 },
      { arbitrary: fc.tuple(fc.constantFrom(...two), tree, tree).map(([of, a, b]) => call(of, a, b)), weight: 6 },
      { arbitrary: fc.tuple(fc.constantFrom(...one), tree).map(([of, a]) => call(of, a)), weight: 2 },
      {
        arbitrary: fc
          .tuple(tree, fc.integer({ min: -3, max: 4 }))
          .map(([a, n]) => call('power', a, n < 0 ? call('negate', number(-n)) : number(n))),
        weight: 1,
      },
      { arbitrary: fc.tuple(tree, tree).map(([a, b]) => call('power', a, b)), weight: 1 },
      {
        arbitrary: fc
          .tuple(fc.constantFrom(...several), fc.array(tree, { minLength: 2, maxLength: 3 }))
          .map(([of, args]) => call(of, ...args)),
        weight: 2,
      },
      { arbitrary: fc.tuple(fc.constantFrom(...stairs), tree).map(([of, a]) => call(of, a)), weight: 1 },
      { arbitrary: fc.tuple(truth, tree, tree).map(([p, a, b]) => call('if', p, a, b)), weight: 1 },
      { arbitrary: curve(tree, tree), weight: 1 },
    ),
    truth: fc.oneof(
      { maxDepth: 2 },
      fc.tuple(fc.constantFrom(...compare), tree, tree).map(([of, a, b]) => call(of, a, b)),
      fc.tuple(fc.constantFrom('and', 'or'), truth, truth).map(([of, p, q]) => call(of, p, q)),
      truth.map((p) => call('not', p)),
    ),
  };
}).tree;

/** Zero or of a size that a circuit has: the squares of smaller numbers leave the range of doubles. */
const between = (least: number, most: number): fc.Arbitrary<number> =>
  fc.double({ min: least, max: most, noNaN: true }).map((x) => (Math.abs(x) < 1e-30 ? 0 : x));

/** Parts of 0 … 1, its ends among them. */
const part = fc.oneof(fc.constantFrom(0, 0.5, 1), between(0, 1));

/** A range of ordinary numbers with points inside it. */
export const rangeWithPoints = (
  count: number,
  least = -10,
  most = 10,
): fc.Arbitrary<{ range: Interval; points: number[] }> =>
  fc
    .tuple(
      fc.oneof(fc.integer({ min: Math.ceil(least), max: Math.floor(most) }), between(least, most)),
      fc.oneof(fc.constantFrom(0, 1e-9, 1), between(0, 8)),
      fc.array(part, { minLength: count, maxLength: count }),
    )
    .map(([lo, width, parts]) => {
      const hi = lo + width;
      const points = parts.map((p) => Math.min(hi, Math.max(lo, p === 1 ? hi : lo + p * (hi - lo))));
      return { range: { lo, hi, certain: true }, points };
    });

/** A range for each of `names`, and points of that box. */
export const boxes = (count: number, least = -5, most = 10): fc.Arbitrary<{ box: Interval[]; points: number[][] }> =>
  fc.tuple(...names.map(() => rangeWithPoints(count, least, most))).map((sides) => ({
    box: sides.map(({ range }) => range),
    points: Array.from({ length: count }, (_, k) => sides.map(({ points }) => points[k]!)),
  }));
