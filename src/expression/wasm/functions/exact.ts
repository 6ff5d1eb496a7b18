import type { Code, Term } from '../code.ts';
import { f64x2 } from '../vectors.ts';

/** A number kept as the unrounded sum of two doubles. */
export interface Pair {
  readonly high: Term;
  readonly low: Term;
}

/** a + b and what rounding took from it, for |a| ≥ |b| or a = 0 (Dekker). */
export function exactSum(code: Code, a: Term, b: Term): Pair {
  const high = code.let(f64x2.add(a, b));
  return { high, low: code.let(f64x2.sub(b, f64x2.sub(high, a))) };
}
