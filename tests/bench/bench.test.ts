import { describe, expect, test } from 'vitest';
import { differences } from '../../src/bench/compare.ts';
import { madeUpBoard } from '../../src/bench/made-up-board.ts';
import { findNumpy, Numpy } from '../../src/bench/numpy.ts';
import { numpyWriters } from '../../src/bench/numpy-operations.ts';
import { numpySource } from '../../src/bench/numpy-source.ts';
import { boardsFor, madeUpSubject, run, type Subject } from '../../src/bench/subject.ts';
import { operations } from '../../src/expression/operations/index.ts';
import { TapeBuilder } from '../../src/expression/tape-builder.ts';
import { part } from '../analysis/simulate/variables.ts';

test('the made-up board is as large as it says', () => {
  const { tape, outputs, variables } = madeUpBoard();
  const counts = new Map<string, number>();
  for (const step of tape.steps) if ('args' in step) counts.set(step.operation, (counts.get(step.operation) ?? 0) + 1);
  expect(variables.length).toBe(80);
  expect(outputs.length).toBe(60);
  const wanted = { divide: 107, sqrt: 15, exp: 10, ln: 5, power: 4 };
  expect(Object.fromEntries(Object.keys(wanted).map((name) => [name, counts.get(name)]))).toEqual(wanted);
  const all = [...counts.values()].reduce((sum, count) => sum + count, 0);
  expect(all).toBeGreaterThan(920);
  expect(all).toBeLessThan(960);
  const kinds = variables.map(({ draw }) => draw.kind);
  expect(['normal', 'uniform', 'triangular'].map((kind) => kinds.filter((one) => one === kind).length)).toEqual([
    40, 20, 20,
  ]);
});

test('every operation can be written for NumPy', () => {
  expect(Object.keys(numpyWriters).sort()).toEqual(Object.keys(operations).sort());
});

test('the program for NumPy needs few arrays and names none that is not there', () => {
  const source = numpySource(boardsFor(madeUpSubject()));
  expect(source).not.toMatch(/undefined|NaN|Infinity/);
  const arrays = Number(/ARRAYS = (\d+)/.exec(source)![1]);
  expect(arrays).toBeLessThan(120);
  expect(Math.max(...[...source.matchAll(/w\[(\d+)\]/g)].map(([, n]) => Number(n)))).toBe(arrays - 1);
});

/** Results that use every operation on parts of every distribution. */
function everything(): Subject {
  const kinds = [
    { kind: 'normal' },
    { kind: 'uniform' },
    { kind: 'triangular' },
    { kind: 'measured', sd: 0.1 },
  ] as const;
  const variables = kinds.map((draw, i) => part(`x${i}`, draw, [1, 1.5, 2.5]));
  const builder = new TapeBuilder();
  const [a, b, c, d] = variables.map(({ id }) => builder.input(id)) as [number, number, number, number];
  const point = (x: number) => builder.constant(x);
  const curve = [point(0.5), point(1), point(1.5), point(4), point(3), point(2)];
  const [less, more] = [builder.call('less', [a, b]), builder.call('greaterEqual', [c, d])];
  const args: Record<string, readonly number[]> = {
    if: [less, c, d],
    and: [less, more],
    or: [less, more],
    not: [less],
    interp: [a, ...curve],
    round: [builder.call('multiply', [a, point(6)])],
    tan: [builder.call('multiply', [a, point(0.5)])],
  };
  const outputs = Object.entries(operations).map(([name, { arity }]) =>
    builder.call(name, args[name] ?? (arity[0] === 1 && arity[1] === 1 ? [a] : [b, c])),
  );
  outputs.push(a, b, c, d);
  const { tape, outputs: slots } = builder.finish(outputs);
  const all = slots.map(() => true);
  return { name: 'everything', parts: { tape, outputs: slots }, variables, slacks: { counted: all, decides: all } };
}

const found = findNumpy();
describe.skipIf(!found)('against NumPy, where it is installed', () => {
  test.each([madeUpSubject(20), everything()])('$name: the same results but for chance', async (subject) => {
    const trials = 50_000;
    const numpy = new Numpy(found!.python, subject);
    const [alone, pair] = [await numpy.ask('alone', trials, 1), await numpy.ask('pair', trials, 2)];
    numpy.close();
    const ours = run(subject, trials);
    expect(differences(subject, ours, alone.results, trials)).toEqual([]);
    expect(differences(subject, ours, pair.results, trials)).toEqual([]);
    const wrong = alone.results.map(([mean, ...rest]) => [mean === null ? null : mean * 1.5 + 1, ...rest] as const);
    expect(differences(subject, ours, wrong as typeof alone.results, trials).length).toBeGreaterThan(0);
  });
});
