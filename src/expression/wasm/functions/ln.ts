import type { Code, Term } from '../code.ts';
import { bits, f64x2, i32x4, i64x2, integer, pattern, shuffleWords, twice } from '../vectors.ts';
import { LN2 } from './constants.ts';
import { elementary } from './elementary.ts';
import { polynomial } from './polynomial.ts';

/**
 * (ln((1 + s)/(1 − s)) − 2s)/s³ in powers of s², for |s| ≤ 3 − 2√2. Minimax by the Remez exchange at 60 digits, within
 * 2⁻⁵⁹·⁵ of ln; the Taylor series would be 2/3, 2/5, 2/7, …
 */
const TAIL = [
  0.6666666666666734, 0.3999999999941399, 0.28571428742558774, 0.22222198554023376, 0.18183565400002522,
  0.1531402118160146, 0.1479626167433497,
];

export interface Split {
  /** Whole power of two, as a double. */
  readonly k: Term;
  /** x/2ᵏ − 1, between √½ − 1 and √2 − 1. */
  readonly f: Term;
}

/** Takes numbers above zero apart as 2ᵏ·(1 + f). Numbers below 2⁻¹⁰²² are first scaled up. */
export function split(code: Code, x: Term): Split {
  const small = code.let(f64x2.lt(x, twice(2 ** -1022)));
  const scaled = bits.select(f64x2.mul(x, twice(2 ** 54)), x, small);
  // Counted from √½, the exponent field changes where the mantissa must.
  const from = code.let(i64x2.sub(scaled, pattern(0x3fe6a09e)));
  const field = code.let(bits.and(from, pattern(0xfff00000)));
  const exponents = i32x4.shrS(field, integer(20));
  const whole = f64x2.fromLowI32(shuffleWords(code.let(exponents), code.let(exponents), [1, 3, 1, 3]));
  const k = code.let(f64x2.sub(whole, bits.and(small, twice(54))));
  const mantissa = i64x2.add(i64x2.sub(from, field), pattern(0x3fe6a09e));
  return { k, f: code.let(f64x2.sub(mantissa, twice(1))) };
}

export interface Series {
  /** ½f², which ln(1 + f) is f less, but for `rest`. */
  readonly half: Term;
  /** s·(½f² + s²·…): ln(1 + f) = f − (½f² − rest). */
  readonly rest: Term;
}

/**
 * ln(1 + f) by s = f/(2 + f), where it is 2·artanh s. Written as f − (½f² − s·(½f² + R)), most of it is exact.
 * Source of the rearrangement: P. T. P. Tang, Table-driven implementation of the logarithm function in IEEE
 * floating-point arithmetic, ACM TOMS 16 (1990); from memory.
 */
export function series(code: Code, f: Term): Series {
  const s = code.let(f64x2.div(f, f64x2.add(twice(2), f)));
  const square = code.let(f64x2.mul(s, s));
  const half = code.let(f64x2.mul(f64x2.mul(twice(0.5), f), f));
  const tail = f64x2.mul(square, polynomial(square, TAIL));
  return { half, rest: code.let(f64x2.mul(s, f64x2.add(half, tail))) };
}

/** Puts right what a logarithm is at 0 (−∞), below (not a number), at infinity, and for not a number. */
export function atTheEdges(x: Term, result: Term): Term {
  const edge = bits.select(twice(-Infinity), bits.select(x, twice(NaN), f64x2.gt(x, twice(0))), f64x2.eq(x, twice(0)));
  const inside = bits.and(f64x2.gt(x, twice(0)), f64x2.lt(x, twice(Infinity)));
  return bits.select(result, edge, inside);
}

/**
 * Natural logarithm, within 1 unit in the last place. 0 gives −∞, numbers below it are not a number.
 */
export const ln = elementary(1, (code, x) => {
  const { k, f } = split(code, x);
  const { half, rest } = series(code, f);
  const low = f64x2.add(rest, f64x2.mul(k, twice(LN2[1])));
  const result = f64x2.sub(f64x2.mul(k, twice(LN2[0])), f64x2.sub(f64x2.sub(half, low), f));
  return atTheEdges(x, result);
});
