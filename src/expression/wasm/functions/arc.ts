import type { Code, Term } from '../code.ts';
import { bits, f64x2, pattern, twice } from '../vectors.ts';
import { HALF_PI, PI, QUARTER_PI } from './constants.ts';
import { elementary } from './elementary.ts';
import { paired } from './polynomial.ts';

/** (arctan t − t)/t³ in powers of t², |t| ≤ tan π/8: minimax by the Remez exchange at 60 digits, 2⁻⁵⁹ of arctan t. */
const TAIL = [
  -0.333333333333332, 0.19999999999953996, -0.1428571428023952, 0.11111110785671437, -0.09090897822569427,
  0.07692061382344582, -0.06663117403472484, 0.05847986651944211, -0.050397427397404645, 0.03807565106416502,
  -0.01791929460016129,
];
/** tan π/8 and tan 3π/8 */
const LOWER = 0.41421356237309503;
const UPPER = 2.414213562373095;
const SIGN = pattern(0x80000000);

/** arctan t for |t| ≤ tan π/8, added to a base of two parts. */
function around(code: Code, t: Term, high: Term, low: Term): Term {
  const square = code.let(f64x2.mul(t, t));
  const tail = f64x2.mul(f64x2.mul(t, square), paired(code, square, TAIL));
  return code.let(f64x2.add(high, f64x2.add(t, f64x2.add(low, tail))));
}

const both = ([high, low]: readonly [number, number], mask: Term): [Term, Term] => [
  bits.and(mask, twice(high)),
  bits.and(mask, twice(low)),
];

/**
 * Angle whose tangent is x, within 2 units in the last place.
 * Where its size a is large, π/2 − arctan(1/a); in the middle, π/4 + arctan((a − 1)/(a + 1)): one division serves all
 * three.
 */
export const atan = elementary(1, (code, x) => {
  const size = code.let(f64x2.abs(x));
  const large = code.let(f64x2.gt(size, twice(UPPER)));
  const middle = code.let(bits.andnot(f64x2.gt(size, twice(LOWER)), large));
  const above = bits.select(twice(-1), bits.select(f64x2.sub(size, twice(1)), size, middle), large);
  const below = bits.select(size, bits.select(f64x2.add(size, twice(1)), twice(1), middle), large);
  const [largeHigh, largeLow] = both(HALF_PI, large);
  const [middleHigh, middleLow] = both(QUARTER_PI, middle);
  const t = code.let(f64x2.div(above, below));
  const angle = around(code, t, bits.or(largeHigh, middleHigh), bits.or(largeLow, middleLow));
  return bits.or(angle, bits.and(x, SIGN));
});

/**
 * Angle of the point (x, y), from −π to π, within 2.5 units in the last place. Signs of zeros and infinities count as
 * in `Math.atan2`.
 */
export const atan2 = elementary(2, (code, y, x) => {
  const [up, side] = [code.let(f64x2.abs(y)), code.let(f64x2.abs(x))];
  const small = code.let(f64x2.min(up, side));
  const large = code.let(f64x2.max(up, side));
  // 0/0 is the direction 0, ∞/∞ that of 1.
  const level = bits.or(f64x2.eq(small, twice(0)), f64x2.eq(small, twice(Infinity)));
  const flat = bits.select(f64x2.pmin(small, twice(1)), f64x2.div(small, large), level);
  const a = code.let(flat);
  const middle = code.let(f64x2.gt(a, twice(LOWER)));
  const t = f64x2.div(
    bits.select(f64x2.sub(a, twice(1)), a, middle),
    bits.select(f64x2.add(a, twice(1)), twice(1), middle),
  );
  const eighth = around(code, code.let(t), ...both(QUARTER_PI, middle));
  const steep = code.let(f64x2.gt(up, side));
  const upright = f64x2.sub(twice(HALF_PI[0]), f64x2.sub(eighth, twice(HALF_PI[1])));
  const first = code.let(bits.select(upright, eighth, steep));
  const behind = f64x2.ne(f64x2.div(twice(1), bits.or(bits.and(x, SIGN), twice(1))), twice(1));
  const backward = f64x2.sub(twice(PI[0]), f64x2.sub(first, twice(PI[1])));
  return bits.or(bits.select(backward, first, behind), bits.and(y, SIGN));
});
