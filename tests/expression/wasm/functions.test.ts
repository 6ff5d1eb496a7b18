import { describe, expect, test } from 'vitest';
import { reducedAngle } from '../../../src/expression/wasm/functions/angle.ts';
import { atan, atan2 } from '../../../src/expression/wasm/functions/arc.ts';
import type { Elementary } from '../../../src/expression/wasm/functions/elementary.ts';
import { exp } from '../../../src/expression/wasm/functions/exp.ts';
import { ln } from '../../../src/expression/wasm/functions/ln.ts';
import { log2, log10 } from '../../../src/expression/wasm/functions/log.ts';
import { power } from '../../../src/expression/wasm/functions/power.ts';
import { cos, sin, tan } from '../../../src/expression/wasm/functions/turn.ts';
import { type Big, exact, unitsOff } from './big.ts';
import { byCalls, overColumns } from './columns.ts';

/** `count` numbers from 0 to 1 that leave no gap (multiples of the golden ratio). */
const spread = (count: number, start = 0): number[] =>
  Array.from({ length: count }, (_, i) => ((i + 1 + start) * 0.6180339887498949) % 1);

const evenly = (from: number, to: number, count = 400): number[] => spread(count).map((u) => from + (to - from) * u);
const widely = (from: number, to: number, count = 400): number[] =>
  spread(count).map((u) => 10 ** (Math.log10(from) * (1 - u) + Math.log10(to) * u));
const bothSigns = (xs: readonly number[]): number[] => xs.map((x, i) => (i % 2 ? -x : x));

/** Doubles next to multiples of π/2, where sine or cosine is nearly zero. */
const nearTurns = [1, 2, 3, 4, 11, 355, 710, 1e5, 1e6].flatMap((n) => {
  const x = n * (Math.PI / 2);
  return [x, x * (1 + 2 ** -52), x * (1 - 2 ** -52)];
});

interface Case {
  readonly name: keyof typeof exact;
  readonly f: Elementary;
  readonly over: string;
  readonly rows: readonly (readonly number[])[];
  /** Units in the last place. */
  readonly within: number;
}
const single = (xs: readonly number[]): number[][] => xs.map((x) => [x]);
const pairs = (as: readonly number[], bs: readonly number[]): number[][] =>
  as.map((a, i) => [a, bs[(i * 7) % bs.length]!]);

const cases: Case[] = [
  { name: 'exp', f: exp, over: '-708 … 709', rows: single(evenly(-708, 709)), within: 1 },
  { name: 'exp', f: exp, over: '-2 … 2', rows: single(evenly(-2, 2)), within: 1 },
  { name: 'exp', f: exp, over: 'below 2.2e-308', rows: single(evenly(-744, -709)), within: 1 },
  { name: 'ln', f: ln, over: '1e-300 … 1e300', rows: single(widely(1e-300, 1e300)), within: 1 },
  { name: 'ln', f: ln, over: '0.5 … 2', rows: single(evenly(0.5, 2)), within: 1 },
  { name: 'ln', f: ln, over: 'below 2.2e-308', rows: single(widely(5e-324, 2e-308)), within: 1 },
  { name: 'log2', f: log2, over: '1e-300 … 1e300', rows: single(widely(1e-300, 1e300)), within: 1 },
  { name: 'log2', f: log2, over: '0.5 … 2', rows: single(evenly(0.5, 2)), within: 1 },
  { name: 'log10', f: log10, over: '1e-300 … 1e300', rows: single(widely(1e-300, 1e300)), within: 1 },
  { name: 'log10', f: log10, over: '0.5 … 2', rows: single(evenly(0.5, 2)), within: 1 },
  { name: 'power', f: power, over: 'ordinary', rows: pairs(widely(0.01, 100), bothSigns(evenly(0, 20))), within: 1 },
  { name: 'power', f: power, over: 'large and small', rows: pairs(widely(1e-22, 1e22), evenly(-13, 13)), within: 1 },
  {
    name: 'power',
    f: power,
    over: 'exponents to 7000',
    rows: pairs(evenly(0.91, 1.1), bothSigns(evenly(0, 7000))),
    within: 1 + 7000 / 256,
  },
  { name: 'sin', f: sin, over: '-10 … 10', rows: single(evenly(-10, 10)), within: 1 },
  { name: 'sin', f: sin, over: 'to 1.6e6', rows: single(bothSigns(widely(1e-6, 1.6e6))), within: 1 },
  { name: 'sin', f: sin, over: 'beyond', rows: single(bothSigns(widely(1.6e6, 1e300, 60))), within: 1 },
  { name: 'sin', f: sin, over: 'near whole turns', rows: single(nearTurns), within: 1 },
  { name: 'cos', f: cos, over: '-10 … 10', rows: single(evenly(-10, 10)), within: 1 },
  { name: 'cos', f: cos, over: 'to 1.6e6', rows: single(bothSigns(widely(1e-6, 1.6e6))), within: 1 },
  { name: 'cos', f: cos, over: 'beyond', rows: single(bothSigns(widely(1.6e6, 1e300, 60))), within: 1 },
  { name: 'cos', f: cos, over: 'near whole turns', rows: single(nearTurns), within: 1 },
  { name: 'tan', f: tan, over: '-10 … 10', rows: single(evenly(-10, 10)), within: 2.5 },
  { name: 'tan', f: tan, over: 'beyond', rows: single(bothSigns(widely(1.6e6, 1e300, 60))), within: 2.5 },
  { name: 'tan', f: tan, over: 'near whole turns', rows: single(nearTurns), within: 2.5 },
  { name: 'atan', f: atan, over: '1e-20 … 1e20', rows: single(bothSigns(widely(1e-20, 1e20))), within: 2 },
  { name: 'atan', f: atan, over: '-4 … 4', rows: single(evenly(-4, 4)), within: 2 },
  {
    name: 'atan2',
    f: atan2,
    over: 'all round',
    rows: pairs(bothSigns(widely(0.1, 10)), evenly(-3, 3)),
    within: 2.5,
  },
];

describe('against sixty-four digits', () => {
  test.each(cases)('$name, $over: within $within units in the last place', ({ name, f, rows, within }) => {
    const results = overColumns(f, rows);
    const reference = exact[name] as (...args: readonly number[]) => Big;
    const off = rows.map((row, i) => Math.abs(unitsOff(results[i]!, reference(...row))));
    const worst = off.indexOf(Math.max(...off));
    expect(off[worst], `${name}(${rows[worst]}) = ${results[worst]}`).toBeLessThanOrEqual(within);
    // A reference that is itself off would show here.
    expect(Math.min(...off)).toBeLessThan(0.5);
  });
});

const odd = [0, -0, 1, -1, Infinity, -Infinity, NaN, 5e-324, -5e-324, 0.5, -0.5, 2, -2, 3, -3, 1e308, -1e308];
const whole = [2 ** 53, 2 ** 53 + 2, -(2 ** 53), 2 ** 52 + 1, 1e300, -1e300];

function alike(got: number, wanted: number): boolean {
  return Object.is(got, wanted) || Math.abs(got - wanted) <= 1e-15 * Math.abs(wanted);
}

describe('zeros, infinities and what is no number, as Math has them', () => {
  test.each([
    ['exp', exp, Math.exp],
    ['ln', ln, Math.log],
    ['log2', log2, Math.log2],
    ['log10', log10, Math.log10],
    ['sin', sin, Math.sin],
    ['cos', cos, Math.cos],
    ['tan', tan, Math.tan],
    ['atan', atan, Math.atan],
  ] as const)('%s', (_, f, reference) => {
    const rows = single(odd);
    for (const results of [overColumns(f, rows), byCalls(f, rows)]) {
      const wrong = odd.filter((x, i) => !alike(results[i]! + 0, reference(x) + 0));
      expect(wrong).toEqual([]);
    }
  });

  test.each([
    ['power', power, (a: number, b: number) => a ** b],
    ['atan2', atan2, Math.atan2],
  ] as const)('%s', (_, f, reference) => {
    const rows = [...odd, ...whole].flatMap((a) => [...odd, ...whole].map((b) => [a, b]));
    for (const results of [overColumns(f, rows), byCalls(f, rows)]) {
      const wrong = rows.filter(([a, b], i) => !alike(results[i]!, reference(a!, b!)));
      expect(wrong).toEqual([]);
    }
  });

  test('calls and loops over columns give the same bits', () => {
    const xs = [...evenly(-30, 30), ...widely(1e-300, 1e300)];
    for (const f of [exp, ln, log2, log10, sin, cos, tan, atan])
      expect(byCalls(f, single(xs))).toEqual(overColumns(f, single(xs)));
    for (const f of [power, atan2]) expect(byCalls(f, pairs(xs, xs))).toEqual(overColumns(f, pairs(xs, xs)));
  });
});

test('an angle of 1e22 radians is taken apart exactly', () => {
  const { quadrant, high, low } = reducedAngle(1e22);
  const value = [Math.sin, Math.cos, (x: number) => -Math.sin(x), (x: number) => -Math.cos(x)][quadrant]!(high + low);
  // Sine of 1e22: a published touchstone of argument reduction (K. C. Ng, 1992; from memory).
  expect(value).toBeCloseTo(-0.8522008497671888, 15);
});
