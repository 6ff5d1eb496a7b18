import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { range, WHOLE } from '../ranges.ts';
import { wrap } from '../tex.ts';
import { pureAt } from './demands.ts';

/** Nearer to critical damping than this the closed form loses digits, and the series is exact to the last. */
export const NEAR = 0.05;
/** Beyond this the peak is 1 to the last digit, and squares would overflow. */
export const FAR = 1e150;
/** Of arccos(z)/√(1 − z²) about z = 1, in powers of z − 1: (−1)ⁿ n!/(2n + 1)!!. */
export const SERIES: readonly number[] = [
  1,
  -1 / 3,
  2 / 15,
  -2 / 35,
  8 / 315,
  -8 / 693,
  16 / 3003,
  -16 / 6435,
  128 / 109395,
];
/** Of minus its slope. */
const FALL = SERIES.slice(1).map((c, n) => -(n + 1) * c);

const polynomial = (x: number, series: readonly number[]): number => series.reduceRight((sum, c) => sum * x + c, 0);

/** The angle, in units of the undamped ring, at which the current peaks: arccos(z)/√(1 − z²), and arcosh beyond 1. */
function angle(z: number): number {
  if (Math.abs(z - 1) < NEAR) return polynomial(z - 1, SERIES);
  if (z < 1) return Math.acos(z) / (Math.sqrt(1 - z) * Math.sqrt(1 + z));
  const side = Math.sqrt(z - 1) * Math.sqrt(1 + z);
  return Math.log(z + side) / side;
}

function valueAt(given: number): number {
  const z = Math.min(given, FAR);
  return z >= 0 ? 2 * z * Math.exp(-z * angle(z)) : Number.NaN;
}

/** 2·e^(−z·g)·(1 − z·g)/(1 − z²), which falls from 2 to 0: the peak rises ever slower. */
function slopeAt(given: number): number {
  if (!(given >= 0)) return Number.NaN;
  const z = Math.min(given, FAR);
  const turned = z * angle(z);
  const fall = Math.abs(z - 1) < NEAR ? polynomial(z - 1, FALL) : (1 - turned) / ((1 - z) * (1 + z));
  return 2 * Math.exp(-turned) * fall;
}

/** What the steps of `valueAt` and `slopeAt` may be off by, the exponent being at most 350. */
const SLACK = 2e-13;
const below = (x: number): number => x * (1 - SLACK);
const above = (x: number): number => x * (1 + SLACK);

function rangeOf(z: Interval): Interval {
  if (z.hi < 0) return WHOLE;
  return range(below(valueAt(Math.max(0, z.lo))), Math.min(1, above(valueAt(z.hi))), z.certain && z.lo >= 0);
}

const slopeRangeOf = (z: Interval): Interval =>
  z.hi < 0 ? WHOLE : range(below(slopeAt(z.hi)), above(slopeAt(Math.max(0, z.lo))), z.certain && z.lo >= 0);

/**
 * The highest current when a voltage V meets a resistance, an inductance and an empty capacitor in series, over V/R:
 * 2z·e^(−z·g(z)) with the damping ratio z = R/2·√(C/L) and g(z) = arccos(z)/√(1 − z²). An operation of its own, for
 * written out z stands five times and both branches lose their digits where z is about 1. It rises from 0 to 1.
 * Source: the step response of a series R L C circuit, its slope set to zero.
 * @example inrush(1) // 2/e
 */
export const inrush: Operation = {
  arity: [1, 1],
  usage: 'inrush(z)',
  says: 'Highest current into a series R, L, C from rest, over V/R; z is the damping ratio R/2 · √(C/L), at least 0',
  dimension: (args) => pureAt(args, 0, 'inrush'),
  value: ([z]) => valueAt(z!),
  range: ([z]) => rangeOf(z!),
  slope: ([z]) => [slopeAt(z!)],
  slopeRange: ([z]) => [slopeRangeOf(z!)],
  code: ([z]) => codeOf(`Math.min(${z}, ${FAR})`),
  tex: ([z]) => {
    const inside = wrap(z!, 'atom');
    const turn = `\\frac{${inside} \\, \\arccos ${inside}}{\\sqrt{1 - ${inside}^{2}}}`;
    return { tex: `2 \\cdot ${inside} \\cdot \\exp\\!\\left(-${turn}\\right)`, binds: 'product', opens: 'figure' };
  },
};

/** The steps of `valueAt`, in their order. */
function codeOf(z: string): string {
  const near = SERIES.reduceRight((sum, c) => `(${sum} * (${z} - 1) + ${c})`, '0');
  const under = `Math.acos(${z}) / (Math.sqrt(1 - ${z}) * Math.sqrt(1 + ${z}))`;
  const side = `(Math.sqrt(${z} - 1) * Math.sqrt(1 + ${z}))`;
  const over = `Math.log(${z} + ${side}) / ${side}`;
  const turn = `(Math.abs(${z} - 1) < ${NEAR} ? ${near} : ${z} < 1 ? ${under} : ${over})`;
  return `(${z} >= 0 ? 2 * ${z} * Math.exp(-${z} * ${turn}) : NaN)`;
}
