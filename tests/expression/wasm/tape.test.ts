import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { operations } from '../../../src/expression/operations/index.ts';
import { point } from '../../../src/expression/ranges.ts';
import { enclose } from '../../../src/expression/readings/enclose.ts';
import { kernelOf } from '../../../src/expression/readings/kernel.ts';
import type { Tape } from '../../../src/expression/tape.ts';
import { TapeBuilder } from '../../../src/expression/tape-builder.ts';
import { farAngle } from '../../../src/expression/wasm/functions/turn.ts';
import { ModuleBuilder } from '../../../src/expression/wasm/module.ts';
import { planOf } from '../../../src/expression/wasm/plan.ts';
import { tapeCode } from '../../../src/expression/wasm/tape.ts';
import { boxes, expressions, names } from '../arbitrary.ts';
import { start } from './columns.ts';

const trials = 8;
const bytes = 8 * trials;

/** Outputs of a tape, a row for each, by WebAssembly. */
function bySimd(tape: Tape, outputs: readonly number[], columns: readonly Float64Array[]): Float64Array[] {
  const module = new ModuleBuilder([farAngle]);
  const inputs = columns.map(() => module.reserve(bytes));
  const results = outputs.map(() => module.reserve(bytes));
  const places = {
    bytes,
    input: (i: number) => inputs[i]!,
    output: (k: number) => results[k]!,
    carried: () => module.reserve(bytes),
  };
  module.export('run', { parameters: [], write: (code) => code.do(tapeCode(tape, outputs, places)) });
  const { memory, run } = start(module);
  columns.forEach((column, i) => {
    new Float64Array(memory, inputs[i]!, trials).set(column);
  });
  run();
  return results.map((place) => new Float64Array(memory, place, trials).slice());
}

function byScript(tape: Tape, outputs: readonly number[], columns: readonly Float64Array[]): Float64Array[] {
  const results = outputs.map(() => new Float64Array(trials));
  kernelOf(tape, outputs)(columns, results, trials);
  return results;
}

/**
 * Whether two values of a slot agree: to 1e-12 of their size, or as closely as the expression itself lets doubles tell.
 */
function agree(got: number, wanted: number, tape: Tape, slot: number, inputs: readonly number[]): boolean {
  if (Object.is(got, wanted) || Math.abs(got - wanted) <= 1e-12 * Math.abs(wanted)) return true;
  const { lo, hi, certain } = enclose(tape, inputs.map(point))[slot]!;
  return !certain || (got >= lo && got <= hi);
}

test('random expressions come out as from the generated script', () => {
  let compared = 0;
  fc.assert(
    fc.property(fc.array(expressions, { minLength: 1, maxLength: 6 }), boxes(trials), (trees, { points }) => {
      const builder = new TapeBuilder();
      for (const name of names) builder.input(name);
      const slots = trees.map((tree) => builder.tree(tree, (name) => builder.input(name)));
      const { tape, outputs } = builder.finish(slots);
      const columns = names.map((_, i) => Float64Array.from(points, (at) => at[i]!));
      const [got, wanted] = [bySimd(tape, outputs, columns), byScript(tape, outputs, columns)];
      outputs.forEach((slot, k) => {
        points.forEach((at, i) => {
          const [a, b] = [got[k]![i]!, wanted[k]![i]!];
          expect(agree(a, b, tape, slot, at), `${a} instead of ${b}`).toBe(true);
          if (Math.abs(a - b) <= 1e-12 * Math.abs(b)) compared++;
        });
      });
    }),
    { numRuns: 1500 },
  );
  // Most of them do agree to 1e-12, and are not let through by the exception.
  expect(compared).toBeGreaterThan(10_000);
});

/** A tape with one operation on its inputs. */
function operationTape(operation: string, count: number): Tape {
  return {
    inputs: Array.from({ length: count }, (_, i) => `x${i}`),
    steps: [{ operation, args: Array.from({ length: count }, (_, i) => i) }],
  };
}

const numbers = fc.oneof(
  fc.constantFrom(0, -0, 1, -1, 0.5, -0.5, 1.5, 2.5, -2.5, Infinity, -Infinity, NaN, 0.49999999999999994, 2 ** 52 + 1),
  fc.double({ min: -1e3, max: 1e3, noNaN: true }),
);
const arithmetic = Object.entries(operations).filter(
  ([name]) => !['power', 'exp', 'ln', 'log2', 'log10', 'sin', 'cos', 'tan', 'atan', 'atan2', 'interp'].includes(name),
);

describe('arithmetic is the same to the last bit, at the edges too', () => {
  test.each(arithmetic)('%s', (name, { arity }) => {
    const count = arity[0] === 1 && arity[1] === 1 ? 1 : arity[0] === 3 ? 3 : 2;
    const truths = ['if', 'and', 'or', 'not'].includes(name);
    const argument = (i: number) => (truths && (name !== 'if' || i === 0) ? fc.constantFrom(0, 1) : numbers);
    const rows = fc.array(fc.tuple(...Array.from({ length: count }, (_, i) => argument(i))), {
      minLength: trials,
      maxLength: trials,
    });
    fc.assert(
      fc.property(rows, (values) => {
        const tape = operationTape(name, count);
        const columns = tape.inputs.map((_, i) => Float64Array.from(values, (row) => row[i]!));
        expect(bySimd(tape, [count], columns)).toEqual(byScript(tape, [count], columns));
      }),
      { numRuns: 60 },
    );
  });
});

test('a curve is the same to the last bit, at its points and beyond its ends', () => {
  const curve = [0, 5, 1, -2, 1.5, 7, 4, 7.25];
  const steps = [
    ...curve.map((constant) => ({ constant })),
    { operation: 'interp', args: [0, 1, 2, 3, 4, 5, 6, 7, 8] },
  ];
  const tape: Tape = { inputs: ['x'], steps };
  const columns = [Float64Array.of(-1, 0, 0.3, 1, 1.25, 3.9, 4, NaN)];
  expect(bySimd(tape, [9], columns)).toEqual(byScript(tape, [9], columns));
});

test('small whole powers are multiplied out', () => {
  for (const exponent of [-8, -3, -1, 0, 1, 2, 3, 5, 8, 9]) {
    const tape: Tape = { inputs: ['x'], steps: [{ constant: exponent }, { operation: 'power', args: [0, 1] }] };
    expect(planOf(tape, [2], 100).units[0]!.kind).toBe(Math.abs(exponent) <= 8 ? 'loop' : 'function');
    const columns = [Float64Array.of(0.3, -1.7, 12, -0.004, 3, 1e10, -2, 1)];
    const [got, wanted] = [bySimd(tape, [2], columns)[0]!, byScript(tape, [2], columns)[0]!];
    wanted.forEach((value, i) => {
      expect(Math.abs(got[i]! - value)).toBeLessThanOrEqual(2e-15 * Math.abs(value));
    });
  }
});

test('outputs may be inputs, constants, and stand twice', () => {
  const tape: Tape = { inputs: ['x'], steps: [{ constant: 3 }, { operation: 'add', args: [0, 1] }] };
  const columns = [Float64Array.of(1, 2, 3, 4, 5, 6, 7, 8)];
  const plus = Float64Array.of(4, 5, 6, 7, 8, 9, 10, 11);
  expect(bySimd(tape, [2, 0, 1, 2], columns)).toEqual([plus, columns[0], new Float64Array(8).fill(3), plus]);
});

test('what waits for a function comes after it, however the loops are cut', () => {
  const builder = new TapeBuilder();
  const [x, y] = [builder.input('x'), builder.input('y')];
  let slot = builder.call('multiply', [x, y]);
  for (let i = 0; i < 40; i++)
    slot = builder.call('add', [builder.call('sin', [slot]), builder.call('multiply', [slot, x])]);
  const { tape, outputs } = builder.finish([slot]);
  for (const longest of [1, 3, 1000]) {
    const done = new Set([0, 1]);
    for (const unit of planOf(tape, outputs, longest).units) {
      for (const one of unit.kind === 'loop' ? unit.slots : [unit.slot]) {
        const step = tape.steps[one - 2]!;
        if ('args' in step) for (const arg of step.args) expect(done.has(arg)).toBe(true);
        done.add(one);
      }
    }
    expect(done.has(outputs[0]!)).toBe(true);
  }
});
