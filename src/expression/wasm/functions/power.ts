import { type Code, type Term, when } from '../code.ts';
import { bits, f64x2, pattern, twice } from '../vectors.ts';
import { LN2, ROUNDER } from './constants.ts';
import { calling, elementary } from './elementary.ts';
import { exactSum, type Pair } from './exact.ts';
import { exp, scaledExp } from './exp.ts';
import { ln, split } from './ln.ts';
import { paired } from './polynomial.ts';

/**
 * (artanh s − s)/s³ in powers of s², for |s| ≤ 3 − 2√2: the Taylor series 1/3, 1/5, 1/7, … from 1/5 on replaced by the
 * minimax polynomial (Remez exchange at 60 digits), within 2⁻⁶⁶ of artanh s / s.
 */
const TAIL = [
  1 / 3,
  0.20000000000001128,
  0.1428571428504924,
  0.11111111260062048,
  0.09090892174569445,
  0.07693379087716225,
  0.06628398868409645,
  0.06598258814593608,
];

/**
 * a to the power b as `Math.pow` has it: within 1 unit in the last place for |b| up to 64, and |b|/256 units more
 * beyond.
 * e to the power b·ln a, where ln a carries about 61 bits: s = f/(2 + f) with what its division lost.
 */
export const power = elementary(2, (code, a, b) => {
  const size = code.let(f64x2.abs(a));
  const logarithm = wideLogarithm(code, size);
  // Beyond this any base but 1 gives 0 or infinity, and products stay within range.
  const exponent = code.let(f64x2.pmin(f64x2.pmax(b, twice(-(2 ** 900))), twice(2 ** 900)));
  const large = code.let(upper(exponent));
  const high = code.let(f64x2.mul(large, logarithm.high));
  const rest = f64x2.mul(f64x2.sub(exponent, large), logarithm.high);
  const low = code.let(f64x2.add(rest, f64x2.mul(exponent, logarithm.low)));
  const result = code.variable(expOf(code, { high, low }));
  const finite = bits.and(f64x2.lt(size, twice(Infinity)), f64x2.lt(f64x2.abs(b), twice(2 ** 900)));
  const ordinary = code.let(bits.and(f64x2.gt(size, twice(0)), finite));
  code.do(
    when(bits.any(bits.not(bits.and(ordinary, f64x2.gt(a, twice(0))))), () => {
      const plain = calling(exp)(f64x2.mul(b, calling(ln)(size)));
      result.set(bits.select(result.get, plain, ordinary))(code);
      result.set(signed(code, a, b, result.get))(code);
    }),
  );
  return result.get;
});

/** Keeps the upper 26 bits of a number, so that its product with another such is exact. */
const upper = (a: Term): Term => bits.and(a, pattern(0xffffffff, 0xf8000000));

/** ln a for a above 0, as a sum of two, of which the larger has 26 bits. */
function wideLogarithm(code: Code, a: Term): Pair {
  const { k, f } = split(code, a);
  const divisor = code.let(f64x2.add(twice(2), f));
  const inverse = code.let(f64x2.div(twice(1), divisor));
  const quotient = code.let(f64x2.mul(f, inverse));
  const s = code.let(upper(quotient));
  // f − s·(2 + f), exactly: 2 + f is cut into two that hold it whole.
  const large = code.let(upper(divisor));
  const small = f64x2.sub(f, f64x2.sub(large, twice(2)));
  const left = f64x2.sub(f64x2.sub(f, f64x2.mul(s, large)), f64x2.mul(s, small));
  const lost = code.let(f64x2.mul(left, inverse));
  const square = code.let(f64x2.mul(quotient, quotient));
  const tail = f64x2.mul(f64x2.mul(quotient, square), paired(code, square, TAIL));
  const sum = exactSum(code, code.let(f64x2.mul(k, twice(LN2[0]))), code.let(f64x2.add(s, s)));
  const rest = f64x2.add(f64x2.mul(k, twice(LN2[1])), f64x2.mul(twice(2), f64x2.add(lost, tail)));
  const both = code.let(f64x2.add(sum.low, rest));
  const high = code.let(upper(f64x2.add(sum.high, both)));
  return { high, low: code.let(f64x2.add(f64x2.sub(sum.high, high), both)) };
}

/** e to the power of a sum; whole numbers of ln 2 are taken out of its larger part. */
function expOf(code: Code, { high, low }: Pair): Term {
  const x = code.let(f64x2.pmin(f64x2.pmax(high, twice(-750)), twice(710)));
  // A product past the ends of doubles has no low part.
  const rest = code.let(bits.and(low, f64x2.eq(x, high)));
  const shifted = code.let(f64x2.add(f64x2.mul(x, twice(Math.LOG2E)), twice(ROUNDER)));
  const k = code.let(f64x2.sub(shifted, twice(ROUNDER)));
  const main = code.let(f64x2.sub(x, f64x2.mul(k, twice(LN2[0]))));
  const lower = code.let(f64x2.sub(f64x2.mul(k, twice(LN2[1])), rest));
  return scaledExp(code, main, lower, shifted);
}

/**
 * The sign where the base is below zero: that of an odd exponent; none where the exponent is not whole. Any base to 0
 * is 1.
 */
function signed(code: Code, a: Term, b: Term, size: Term): Term {
  const half = code.let(f64x2.mul(b, twice(0.5)));
  const whole = code.let(f64x2.eq(f64x2.floor(b), b));
  const odd = bits.and(whole, f64x2.ne(f64x2.floor(half), half));
  const sign = bits.and(bits.and(a, odd), pattern(0x80000000));
  const undefinedHere = bits.andnot(
    bits.and(f64x2.lt(a, twice(0)), f64x2.gt(a, twice(-Infinity))),
    bits.or(whole, f64x2.ne(b, b)),
  );
  const value = bits.select(twice(NaN), bits.xor(size, sign), undefinedHere);
  return bits.select(twice(1), value, f64x2.eq(b, twice(0)));
}
