import type { Code, Term } from '../code.ts';
import { bits, f64x2, pattern, twice } from '../vectors.ts';
import { LOG10_2, PER_LN2, PER_LN10 } from './constants.ts';
import { elementary } from './elementary.ts';
import { atTheEdges, series, split } from './ln.ts';

/** How a logarithm is made of the natural one: 1/ln b, and log_b 2, each as its upper bits and the rest. */
interface Base {
  readonly scale: readonly [high: number, low: number];
  readonly two: readonly [high: number, low: number];
}

/**
 * ln(1 + f) is cut into an upper part of few bits and the rest, so that its product with the upper bits of the scale is
 * exact and only the small rest is rounded.
 */
function logarithm(code: Code, x: Term, { scale, two }: Base): Term {
  const { k, f } = split(code, x);
  const { half, rest } = series(code, f);
  const high = code.let(bits.and(f64x2.sub(f, half), pattern(0xffffffff)));
  const low = code.let(f64x2.add(f64x2.sub(f64x2.sub(f, high), half), rest));
  const scaled = code.let(f64x2.mul(high, twice(scale[0])));
  const small = f64x2.add(f64x2.mul(f64x2.add(low, high), twice(scale[1])), f64x2.mul(low, twice(scale[0])));
  const whole = code.let(f64x2.mul(k, twice(two[0])));
  const sum = code.let(f64x2.add(whole, scaled));
  const lost = f64x2.add(f64x2.sub(whole, sum), scaled);
  const remainder = f64x2.add(f64x2.add(f64x2.mul(k, twice(two[1])), small), lost);
  return atTheEdges(x, f64x2.add(sum, remainder));
}

const BINARY: Base = { scale: PER_LN2, two: [1, 0] };
const DECIMAL: Base = { scale: PER_LN10, two: LOG10_2 };

/** Logarithm to the base 2, within 1 unit in the last place; whole for powers of two. */
export const log2 = elementary(1, (code, x) => logarithm(code, x, BINARY));

/** Logarithm to the base 10, within 1 unit in the last place. */
export const log10 = elementary(1, (code, x) => logarithm(code, x, DECIMAL));
