import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Interval } from '../../../src/expression/interval.ts';
import { addRanges, multiplyRanges, point, subtractRanges, ZERO } from '../../../src/expression/ranges.ts';
import { enclose } from '../../../src/expression/readings/enclose.ts';
import { kernelOf } from '../../../src/expression/readings/kernel.ts';
import { gradient } from '../../../src/expression/readings/slope.ts';
import { gradientRange } from '../../../src/expression/readings/slope-range.ts';
import { evaluate, evaluateTree } from '../../../src/expression/readings/value.ts';
import { specialise } from '../../../src/expression/specialise.ts';
import type { Tree } from '../../../src/expression/tree.ts';
import { boxes, expressions, names } from '../arbitrary.ts';
import { expectHeld, expectSound } from '../holds.ts';
import { tapeOf } from '../tapes.ts';

const rangeOf = (tree: Tree, box: readonly Interval[], options = {}): Interval => {
  const { tape, output } = tapeOf(tree, options);
  return enclose(tape, box)[output]!;
};
const lookup = (at: readonly number[]) => (name: string) => at[names.indexOf(name as 'a')]!;
const meets = (a: Interval, b: Interval): boolean => a.lo <= b.hi && b.lo <= a.hi;

describe('random expressions', () => {
  test('no value lies outside the enclosure, as typed or simplified', () => {
    fc.assert(
      fc.property(expressions, boxes(4), (tree, { box, points }) => {
        for (const simplify of [true, false]) {
          const { tape, output } = tapeOf(tree, { simplify });
          const range = enclose(tape, box)[output]!;
          expectSound(range);
          for (const at of points) {
            const values = evaluate(tape, at);
            // From a division by zero, or from overflow, a value may come back; no range speaks of those.
            if (values.includes(Infinity) || values.includes(-Infinity)) continue;
            if (Number.isNaN(values[output]!)) expect(range.certain).toBe(false);
            else expectHeld(range, values[output]!);
          }
        }
      }),
      { numRuns: 10_000 },
    );
  });

  test('a tree and its tape as typed have the same bits', () => {
    fc.assert(
      fc.property(expressions, boxes(1), (tree, { points: [at] }) => {
        const { tape, output } = tapeOf(tree, { simplify: false });
        const value = evaluate(tape, at!)[output]!;
        // Constants are calculated beforehand only where they come to a number.
        if (Number.isFinite(value)) expect(value).toBe(evaluateTree(tree, lookup(at!)));
      }),
      { numRuns: 3000 },
    );
  });

  test('what was simplified is the same number: both enclose it at a point', () => {
    fc.assert(
      fc.property(expressions, boxes(1), (tree, { points: [at] }) => {
        const here = at!.map(point);
        const typed = rangeOf(tree, here, { simplify: false });
        const simpler = rangeOf(tree, here);
        if (!typed.certain) return;
        expect(simpler.certain).toBe(true);
        expect({ typed, simpler, meets: meets(typed, simpler) }).toMatchObject({ meets: true });
      }),
      { numRuns: 10_000 },
    );
  });

  test('the slope ranges hold the change between any two points of the box', () => {
    fc.assert(
      fc.property(expressions, boxes(2), (tree, { box, points: [from, to] }) => {
        const { tape, output } = tapeOf(tree);
        const ranges = enclose(tape, box);
        if (!ranges[output]!.certain) return;
        const slopes = gradientRange(tape, ranges, output);
        slopes.forEach(expectSound);
        const change = subtractRanges(enclose(tape, to!.map(point))[output]!, enclose(tape, from!.map(point))[output]!);
        const bound = slopes.reduce(
          (sum, slope, i) => addRanges(sum, multiplyRanges(slope, subtractRanges(point(to![i]!), point(from![i]!)))),
          ZERO,
        );
        expect({ change, bound, meets: meets(change, bound) }).toMatchObject({ meets: true });
      }),
      { numRuns: 5000 },
    );
  });

  test('the gradient lies in the slope ranges', () => {
    fc.assert(
      fc.property(expressions, boxes(1), (tree, { box, points: [at] }) => {
        const { tape, output } = tapeOf(tree);
        const ranges = enclose(tape, box);
        if (!ranges[output]!.certain) return;
        const slopes = gradientRange(tape, ranges, output);
        gradient(tape, evaluate(tape, at!), output).forEach((slope, i) => {
          const { lo, hi } = slopes[i]!;
          const rounding = 1e-9 * Math.max(1, Math.abs(slope));
          if (Number.isFinite(slope)) expectHeld({ lo: lo - rounding, hi: hi + rounding, certain: true }, slope);
        });
      }),
      { numRuns: 3000 },
    );
  });

  test('the kernel gives the same bits as evaluate', () => {
    fc.assert(
      fc.property(fc.array(expressions, { minLength: 1, maxLength: 3 }), boxes(3), (trees, { points }) => {
        for (const tree of trees) {
          const { tape, output } = tapeOf(tree);
          const columns = names.map((_, i) => Float64Array.from(points, (at) => at[i]!));
          const results = [new Float64Array(3)];
          kernelOf(tape, [output])(columns, results, 3);
          expect([...results[0]!]).toEqual(points.map((at) => evaluate(tape, at)[output]!));
        }
      }),
      { numRuns: 1000 },
    );
  });

  test('holding inputs at a number gives the same number', () => {
    fc.assert(
      fc.property(expressions, boxes(1), (tree, { points: [at] }) => {
        const { tape, output } = tapeOf(tree);
        const held = specialise(
          tape,
          new Map([
            [0, at![0]!],
            [2, at![2]!],
          ]),
          [output],
        );
        expect(held.inputs.every((i) => i === 1 || i === 3)).toBe(true);
        const whole = enclose(tape, at!.map(point))[output]!;
        const part = enclose(
          held.tape,
          held.inputs.map((i) => point(at![i]!)),
        )[held.outputs[0]!]!;
        if (whole.certain) expect({ whole, part, meets: meets(whole, part) }).toMatchObject({ meets: true });
      }),
      { numRuns: 3000 },
    );
  });
});
