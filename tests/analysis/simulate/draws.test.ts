import { describe, expect, test } from 'vitest';
import { deviation } from '../../../src/analysis/sensitivity.ts';
import { upperDeviate } from '../../../src/analysis/simulate/normal-table.ts';
import { fill, lawOf } from '../../../src/analysis/simulate/sample.ts';
import { simdBlocks } from '../../../src/analysis/simulate/simd/blocks.ts';
import { normalCdf, normalQuantile } from '../../../src/analysis/statistics.ts';
import type { Draw, Variable } from '../../../src/analysis/variable.ts';
import { part } from './variables.ts';

const n = 200_000;
const tail = normalCdf(-3);
/**
 * Normal on either side of 2 with its own deviation, each side with half of the chance, cut off at three deviations.
 */
const twoSided = (x: number): number => (normalCdf(x < 2 ? (x - 2) / 0.2 : (x - 2) / 0.4) - tail) / (1 - 2 * tail);

interface Case {
  readonly name: string;
  readonly draw: Draw;
  readonly range: readonly [number, number, number];
  /** Chance to lie below x. */
  readonly chance: (x: number) => number;
}
const cases: Case[] = [
  { name: 'uniform', draw: { kind: 'uniform' }, range: [1, 2, 4], chance: (x) => (x - 1) / 3 },
  {
    name: 'triangular',
    draw: { kind: 'triangular' },
    range: [1, 2, 4],
    chance: (x) => (x < 2 ? (x - 1) ** 2 / 3 : 1 - (4 - x) ** 2 / 6),
  },
  {
    name: 'triangular, mode at an end',
    draw: { kind: 'triangular' },
    range: [1, 1, 3],
    chance: (x) => 1 - (3 - x) ** 2 / 4,
  },
  {
    name: 'normal',
    draw: { kind: 'normal' },
    range: [1, 2.5, 4],
    chance: (x) => (normalCdf((x - 2.5) / 0.5) - tail) / (1 - 2 * tail),
  },
  { name: 'normal, wider above', draw: { kind: 'normal' }, range: [1.4, 2, 3.2], chance: twoSided },
  { name: 'measured', draw: { kind: 'measured', sd: 0.5 }, range: [0, 2, 4], chance: (x) => normalCdf((x - 2) / 0.5) },
];

function drawn(variable: Variable, count = n): Float64Array {
  const column = new Float64Array(count);
  fill(column, lawOf(variable, 3), 0);
  return column;
}

describe.each(cases)('$name', ({ draw, range, chance }) => {
  const variable = part('x', draw, range);
  const values = drawn(variable).sort();

  test('follows its distribution (Kolmogorov–Smirnov)', () => {
    let most = 0;
    values.forEach((x, i) => {
      most = Math.max(most, Math.abs(chance(x) - i / n), Math.abs(chance(x) - (i + 1) / n));
    });
    // Exceeded once in 20 000.
    expect(most * Math.sqrt(n)).toBeLessThan(2.3);
  });

  test('keeps its limits', () => {
    if (draw.kind === 'measured') return;
    expect(values[0]).toBeGreaterThanOrEqual(range[0]);
    expect(values.at(-1)).toBeLessThanOrEqual(range[2]);
  });

  test('has the deviation that sensitivities take it to have', () => {
    const mean = values.reduce((sum, x) => sum + x, 0) / n;
    const sd = Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / n);
    expect(Math.abs(sd / deviation(variable) - 1)).toBeLessThan(0.01);
  });
});

test('either side of an uneven tolerance comes up as often', () => {
  const above = drawn(part('x', { kind: 'normal' }, [1.4, 2, 3.2])).filter((x) => x > 2).length;
  expect(Math.abs(above - n / 2)).toBeLessThan(5 * Math.sqrt(n / 4));
});

test('the machine draws the same bits', () => {
  const variables = cases.map(({ draw, range }, i) => part(`x${i}`, draw, range));
  const tape = { inputs: variables.map(({ id }) => id), steps: [] };
  const outputs = variables.map((_, i) => i);
  const laws = new Map(variables.map((variable, i) => [i, lawOf(variable, 3)]));
  const { block, run } = simdBlocks({ tape, outputs, decides: outputs.map(() => false), laws });
  const column = new Float64Array(block);
  for (const from of [0, block, 999_424]) {
    run(from).forEach((got, i) => {
      fill(column, laws.get(i)!, from);
      expect(got).toEqual(column);
    });
  }
});

test('a draw depends on seed, name and trial alone', () => {
  const law = lawOf(part('x', { kind: 'normal' }, [1, 2, 3]), 3);
  const [whole, later] = [new Float64Array(1000), new Float64Array(500)];
  fill(whole, law, 0);
  fill(later, law, 500);
  expect(later).toEqual(whole.subarray(500));
});

test('the table of the normal quantile: within 4e-10, continuous and falling', () => {
  let before = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 400_000; i++) {
    const p = 2 ** (-33 + (32 * (i + 0.5)) / 400_000);
    const z = upperDeviate(p);
    expect(Math.abs(z + normalQuantile(p))).toBeLessThan(4e-10);
    expect(z).toBeLessThan(before);
    before = z;
  }
  for (let d = 1; d < 32; d++) {
    const p = 2 ** (d - 33);
    expect(Math.abs(upperDeviate(p) - upperDeviate(p * (1 - 2 ** -53)))).toBeLessThan(1e-14);
  }
});
