import type { Code, Term } from '../code.ts';
import { f64x2, i32x4, i64x2, integer, pattern, twice } from '../vectors.ts';
import { LN2, ROUNDER } from './constants.ts';
import { elementary } from './elementary.ts';
import { paired } from './polynomial.ts';

/**
 * (eʳ − 1 − r)/r² for |r| ≤ ½ ln 2. Minimax by the Remez exchange at 60 digits, weighted for the relative error of eʳ:
 * 2⁻⁶⁴ at most. The first ones are ½, ⅙, … of the Taylor series but for their last bits.
 */
const TAIL = [
  0.5, 0.16666666666666682, 0.041666666666666095, 0.008333333333316983, 0.001388888888911639, 0.000198412698965142,
  2.4801586925656112e-5, 2.7557234728557597e-6, 2.755758233694174e-7, 2.511208429742466e-8, 2.0826565595847573e-9,
];

/**
 * e to the power x, within 1 unit in the last place. Overflows to infinity above 709.78, goes through the numbers below
 * 2.2e−308 to 0 at −745.1; not a number stays so.
 * x = k·ln 2 + r with a two-part ln 2 (W. J. Cody, W. Waite, Software Manual for the Elementary Functions, 1980), then
 * 2ᵏ·eʳ. The scale goes on in two halves, so that neither leaves the range of doubles.
 */
export const exp = elementary(1, (code, given) => {
  const x = code.let(f64x2.pmin(f64x2.pmax(given, twice(-750)), twice(710)));
  const shifted = code.let(f64x2.add(f64x2.mul(x, twice(Math.LOG2E)), twice(ROUNDER)));
  const k = code.let(f64x2.sub(shifted, twice(ROUNDER)));
  const high = code.let(f64x2.sub(x, f64x2.mul(k, twice(LN2[0]))));
  const low = code.let(f64x2.mul(k, twice(LN2[1])));
  return scaledExp(code, high, low, shifted);
});

/**
 * 2ᵏ·e^(high − low).
 * @param shifted  k + ROUNDER
 */
export function scaledExp(code: Code, high: Term, low: Term, shifted: Term): Term {
  const r = code.let(f64x2.sub(high, low));
  const lost = code.let(f64x2.sub(f64x2.sub(high, r), low));
  const square = code.let(f64x2.mul(r, r));
  const tail = code.let(f64x2.mul(square, paired(code, r, TAIL)));
  const power = code.let(f64x2.add(twice(1), f64x2.add(r, f64x2.add(tail, lost))));
  const k = code.let(i64x2.sub(shifted, twice(ROUNDER)));
  const half = code.let(i32x4.shrS(k, integer(1)));
  return f64x2.mul(f64x2.mul(power, scale(half)), scale(i64x2.sub(k, half)));
}

/** 2ᵏ for small whole k of 64 bits. */
const scale = (k: Term): Term => i64x2.shl(i64x2.add(k, pattern(0, 1023)), integer(52));
