import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Operation } from '../../../src/expression/operation.ts';
import { functionNames, type OperationName, operations } from '../../../src/expression/operations/index.ts';
import { addRanges, multiplyRanges, point, range, subtractRanges } from '../../../src/expression/ranges.ts';
import { expectHeld, expectSound } from '../holds.ts';
import { argumentsOf } from './arguments.ts';

const all = Object.entries(operations) as [OperationName, Operation][];
const runs = { numRuns: 1000 };

describe.each(all)('%s', (name, operation) => {
  const given = argumentsOf(name, Math.min(2, operation.arity[1]));

  test('every value lies inside the range of its arguments', () => {
    fc.assert(
      fc.property(given, ({ ranges, points }) => {
        const found = operation.range(ranges);
        expectSound(found);
        for (const at of points) {
          const value = operation.value(at);
          // Where there is no value, the range has to say that it leaves something out.
          if (Number.isNaN(value)) expect(found.certain).toBe(false);
          else if (Number.isFinite(value)) expectHeld(found, value);
        }
      }),
      runs,
    );
  });

  test('a range that is not certain makes the result not certain, where it matters', () => {
    fc.assert(
      fc.property(given, ({ ranges }) => {
        ranges.forEach((side, k) => {
          const unused = (name === 'if' && k > 0 && ranges[0]!.lo === ranges[0]!.hi) || (name === 'interp' && k > 0);
          const doubtful = ranges.with(k, { ...side, certain: false });
          if (!unused) expect(operation.range(doubtful).certain).toBe(false);
        });
      }),
      { numRuns: 50 },
    );
  });

  test('the slope ranges hold the change between any two points', () => {
    fc.assert(
      fc.property(given, ({ ranges, points: [from, to] }) => {
        const whole = operation.range(ranges);
        if (!whole.certain) return;
        const slopes = operation.slopeRange(ranges, whole);
        slopes.forEach(expectSound);
        // One argument after another, so that each slope answers for its own.
        for (let k = 0; k < from.length; k++) {
          const before = from.map((_, i) => (i < k ? to[i]! : from[i]!));
          const after = before.with(k, to[k]!);
          const change = subtractRanges(operation.range(after.map(point)), operation.range(before.map(point)));
          const step = subtractRanges(point(to[k]!), point(from[k]!));
          const bound = multiplyRanges(slopes[k]!, step);
          const overlap = change.lo <= bound.hi && bound.lo <= change.hi;
          expect({ change, bound, overlap }).toMatchObject({ overlap: true });
        }
      }),
      runs,
    );
  });

  test('the slope at a point is that of a small step, and lies in the slope range', () => {
    fc.assert(
      fc.property(given, ({ ranges, points: [at] }) => {
        const whole = operation.range(ranges);
        const slopes = operation.slope(at, operation.value(at));
        expect(slopes).toHaveLength(at.length);
        const bounds = operation.slopeRange(ranges, whole);
        for (let k = 0; k < at.length; k++) {
          if (whole.certain && Number.isFinite(slopes[k]!)) expectHeld(widened(bounds[k]!), slopes[k]!);
          if (!isFixed(name, k)) expectSmallStep(operation, at, k, slopes[k]!);
        }
      }),
      runs,
    );
  });

  test('the generated code gives the same bits', () => {
    fc.assert(
      fc.property(given, ({ points: [at] }) => {
        const names = at.map((_, i) => `x${i}`);
        const run = new Function(...names, `return ${operation.code(names)};`);
        expect(run(...at)).toBe(operation.value(at));
      }),
      { numRuns: 200 },
    );
  });

  test('nothing is NaN at the ends of the number line', () => {
    const huge = fc.double({ noNaN: true, noDefaultInfinity: true });
    const wide = fc.tuple(fc.oneof(huge, fc.constant(-Infinity)), fc.oneof(huge, fc.constant(Infinity)));
    const count = Math.min(2, operation.arity[1]);
    if (['interp', 'if', 'and', 'or', 'not'].includes(name)) return;
    fc.assert(
      fc.property(fc.array(wide, { minLength: count, maxLength: count }), (ends) => {
        const ranges = ends.map(([a, b]) => range(Math.min(a, b), Math.max(a, b)));
        const whole = operation.range(ranges);
        expectSound(whole);
        operation.slopeRange(ranges, whole).forEach(expectSound);
      }),
      runs,
    );
  });
});

/** Truths are 0 or 1, and the x of a curve are typed: there is no small step from them. */
const isFixed = (name: OperationName, k: number): boolean =>
  name === 'and' || name === 'or' || name === 'not' || (name === 'if' && k === 0) || (name === 'interp' && k % 2 === 1);

test('every function is called in its usage as it is in text', () => {
  for (const name of functionNames) expect(operations[name as OperationName].usage).toMatch(new RegExp(`^${name}\\(`));
});

/** Slopes at a point are rounded to nearest, their ranges are exact. */
const widened = (slope: { lo: number; hi: number }): { lo: number; hi: number; certain: boolean } => {
  const more = 1e-12 * Math.max(1, Math.abs(slope.lo), Math.abs(slope.hi));
  return range(slope.lo - more, slope.hi + more);
};

/** A secant over a step, where the function is smooth enough there for it to say anything: the slopes at both ends agree. */
function expectSmallStep(operation: Operation, at: readonly number[], k: number, slope: number): void {
  const h = 1e-5 * Math.max(1, Math.abs(at[k]!));
  const [below, above] = [at.with(k, at[k]! - h), at.with(k, at[k]! + h)];
  const around = at.map((x, i) => (i === k ? range(x - h, x + h) : point(x)));
  const whole = operation.range(around);
  const bend = operation.slopeRange(around, whole)[k]!;
  const spread = bend.hi - bend.lo;
  if (!whole.certain || !Number.isFinite(slope) || !(spread < 1e-2 * Math.max(1, Math.abs(slope)))) return;
  const secant = (operation.value(above) - operation.value(below)) / (2 * h);
  const noise = (1e-9 * Math.max(Math.abs(whole.lo), Math.abs(whole.hi))) / h / 1e4;
  const close = addRanges(bend, range(-noise - 1e-6, noise + 1e-6));
  expectHeld(close, secant);
  expectHeld(close, slope);
}
