import { describe, expect, test } from 'vitest';
import { fill, lawOf } from '../../../src/analysis/simulate/sample.ts';
import { simulate } from '../../../src/analysis/simulate/simulate.ts';
import { parseExpression as parse } from '../../../src/expression/parse.ts';
import { kernelOf } from '../../../src/expression/readings/kernel.ts';
import { TapeBuilder } from '../../../src/expression/tape-builder.ts';
import { part } from './variables.ts';

const variables = [
  part('u', { kind: 'uniform' }, [0, 0.5, 1]),
  part('v', { kind: 'uniform' }, [0, 0.5, 1]),
  part('z', { kind: 'measured', sd: 1 }, [-4, 0, 4]),
];

/** Equations of u, v (uniform from 0 to 1) and z (standard normal) as outputs. */
function tapeOf(equations: readonly string[]) {
  const builder = new TapeBuilder();
  for (const { id } of variables) builder.input(id);
  const slots = equations.map((text) => builder.tree(parse(text), (name) => builder.input(name)));
  return builder.finish(slots);
}

function simulated(equations: readonly string[], trials: number, decides = equations.map(() => false)) {
  const parts = tapeOf(equations);
  return simulate(parts, variables, { counted: equations.map(() => true), decides }, { seed: 1, trials });
}

/** All values of an equation, sorted. */
function values(equation: string, trials: number): Float64Array {
  const { tape, outputs } = tapeOf([equation]);
  const columns = variables.map((variable) => {
    const column = new Float64Array(trials);
    fill(column, lawOf(variable, 1), 0);
    return column;
  });
  const result = new Float64Array(trials);
  kernelOf(tape, outputs)(columns, [result], trials);
  return result;
}

const trials = 60_000;

/** Quantiles by definition: sort, and go between neighbours. */
function quantiles(sample: Float64Array): number[] {
  const sorted = sample.toSorted();
  return [0.00135, 0.025, 0.5, 0.975, 0.99865].map((p) => {
    const at = (sorted.length - 1) * p;
    const below = Math.floor(at);
    return sorted[below]! + (sorted[below + 1]! - sorted[below]!) * (at - below);
  });
}

describe('results of any shape have exact quantiles', () => {
  test.each([
    ['ordinary', 'u + v'],
    ['half of the boards at one value', 'min(u, 0.5)'],
    ['nearly all boards at one value', 'max(u, 0.9999)'],
    ['all but one in a thousand at one value', 'max(u, 0.999)'],
    ['two values', 'if(u < 0.3, 1, 2)'],
    ['whole numbers', 'floor(10 * u)'],
    ['a long tail', '1 / u'],
    ['a very long tail', '1 / (u * u) / (u * u)'],
    ['two heaps far apart', 'if(u < 0.5, z, 1000000 + z)'],
    ['a narrow heap with a few far off', 'if(u < 0.0005, 1000000 * v, v)'],
    ['numbers large beside their spread', '1000000000 + v'],
    ['tiny numbers', '1e-200 * (1 + u)'],
    ['subnormal differences', '1e-320 * u'],
    ['numbers as large as their squares allow', '1e150 * (u - 0.5)'],
  ])('%s', (_, equation) => {
    const sample = values(equation, trials);
    const { spreads, failures } = simulated([equation], trials);
    expect(spreads[0]!.quantiles).toEqual(quantiles(sample));
    expect(failures[0]).toBe(sample.filter((x) => !(x >= 0)).length);
    expect(spreads[0]!.histogram.counts.reduce((sum, count) => sum + count, 0)).toBe(trials);
    expect(spreads[0]!.histogram.from).toBeLessThanOrEqual(Math.min(...sample.toSorted().slice(0, 1)));
  });
});

test('a result that no part moves has no spread', () => {
  const { spreads, failures, failed } = simulated(['u - u', '3', '0 - 2', 'u'], 1000, [true, true, false, false]);
  expect(spreads.slice(0, 3).map(({ sd }) => sd)).toEqual([0, 0, 0]);
  expect(spreads[1]).toMatchObject({ mean: 3, quantiles: [3, 3, 3, 3, 3] });
  expect(failures).toEqual([0, 0, 1000, 0]);
  expect(failed).toBe(0);
});

test('a slack that is below zero whatever the parts fails on every board', () => {
  expect(simulated(['0 - 2'], 1000, [true])).toMatchObject({ failures: [1000], failed: 1000 });
});

test('a slack without a value fails, and its output has no spread', () => {
  const { spreads, failures, failed } = simulated(['sqrt(u - 0.25)', 'u'], trials, [true, true]);
  const below = values('u - 0.25', trials).filter((x) => x < 0).length;
  expect(failures).toEqual([below, 0]);
  expect(failed).toBe(below);
  expect(spreads[0]!.sd).toBeNaN();
  expect(spreads[1]!.sd).toBeGreaterThan(0);
});

test('boards fail together: what decides is counted once a board', () => {
  const [a, b] = ['u - 0.1', 'v - 0.2'];
  const { failures, failed } = simulated([a, b, 'z'], trials, [true, true, false]);
  const [one, two] = [values(a, trials), values(b, trials)];
  expect(failures.slice(0, 2)).toEqual([one, two].map((column) => column.filter((x) => x < 0).length));
  expect(failed).toBe(one.filter((x, i) => x < 0 || two[i]! < 0).length);
});

test('the same slack asked for twice, once to decide and once not', () => {
  const { spreads, failures, failed } = simulated(['u - 0.1', 'u - 0.1'], 5000, [false, true]);
  expect(spreads[0]).toEqual(spreads[1]);
  expect(failures[0]).toBe(failures[1]);
  expect(failed).toBe(failures[0]);
});

test('a further part leaves the draws of the others alone', () => {
  const one = simulated(['u'], 3000).spreads[0];
  const more = simulated(['u', 'u + v + z'], 3000).spreads[0];
  expect(more).toEqual(one);
});

test('another seed gives other boards', () => {
  const parts = tapeOf(['u']);
  const slacks = { counted: [true], decides: [false] };
  const [a, b] = [1, 2].map((seed) => simulate(parts, variables, slacks, { seed, trials: 1000 }));
  expect(a!.spreads[0]!.mean).not.toBe(b!.spreads[0]!.mean);
});

test('angles beyond all bounds, inside the machine', () => {
  const equation = 'sin(1e9 * u)';
  const { spreads } = simulated([equation], 2000);
  const expected = quantiles(values(equation, 2000));
  spreads[0]!.quantiles.forEach((value, i) => {
    expect(Math.abs(value - expected[i]!)).toBeLessThan(1e-12);
  });
});
