import type { Code, Term } from '../code.ts';
import { f64x2, twice } from '../vectors.ts';

/** A number kept as the unrounded sum of two doubles. */
export interface Pair {
  readonly high: Term;
  readonly low: Term;
}

/** The upper 26 bits of a number, and the rest. */
function halves(code: Code, a: Term): Pair {
  const wide = code.let(f64x2.mul(a, twice(2 ** 27 + 1)));
  const high = code.let(f64x2.sub(wide, f64x2.sub(wide, a)));
  return { high, low: code.let(f64x2.sub(a, high)) };
}

/**
 * a·b and what rounding took from it, exactly, for sizes below 2⁹⁹⁶.
 * Source: T. J. Dekker, A floating-point technique for extending the available precision, Numer. Math. 18 (1971).
 */
export function exactProduct(code: Code, a: Term, b: Term): Pair {
  const high = code.let(f64x2.mul(a, b));
  const [x, y] = [halves(code, a), halves(code, b)];
  const above = f64x2.sub(f64x2.mul(x.high, y.high), high);
  const middle = f64x2.add(f64x2.add(above, f64x2.mul(x.high, y.low)), f64x2.mul(x.low, y.high));
  return { high, low: code.let(f64x2.add(middle, f64x2.mul(x.low, y.low))) };
}

/** a + b and what rounding took from it, for |a| ≥ |b| or a = 0 (Dekker). */
export function exactSum(code: Code, a: Term, b: Term): Pair {
  const high = code.let(f64x2.add(a, b));
  return { high, low: code.let(f64x2.sub(b, f64x2.sub(high, a))) };
}
