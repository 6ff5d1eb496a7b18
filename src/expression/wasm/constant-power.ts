import type { Code, Term } from './code.ts';
import { f64x2, twice } from './vectors.ts';

/** Largest exponent that is multiplied out: each product may add half a unit in the last place. */
const largest = 8;

/** Whether a power is better multiplied out than taken by logarithm: for small whole exponents. */
export const multipliedOut = (exponent: number | undefined): boolean =>
  exponent !== undefined && Number.isInteger(exponent) && Math.abs(exponent) <= largest;

/** a to a small whole power by squaring and multiplying; for exponents below zero of 1/a. */
export function constantPower(code: Code, a: Term, exponent: number): Term {
  if (exponent === 0) return twice(1);
  let square = exponent < 0 ? code.let(f64x2.div(twice(1), a)) : a;
  let result: Term | undefined;
  for (let rest = Math.abs(exponent); rest > 0; rest = Math.floor(rest / 2)) {
    if (rest % 2 === 1) result = result ? code.let(f64x2.mul(result, square)) : square;
    if (rest > 1) square = code.let(f64x2.mul(square, square));
  }
  return result!;
}
