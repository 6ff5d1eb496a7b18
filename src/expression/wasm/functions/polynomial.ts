import type { Code, Term } from '../code.ts';
import { f64x2, twice } from '../vectors.ts';

/** c₀ + c₁x + c₂x² + …, from the highest power down (Horner). */
export function polynomial(x: Term, coefficients: readonly number[]): Term {
  return coefficients
    .slice(0, -1)
    .reduceRight<Term>((sum, c) => f64x2.add(f64x2.mul(sum, x), twice(c)), twice(coefficients.at(-1)!));
}

/**
 * The same in pairs, then pairs of pairs (Estrin): the processor works on several at once, so that a long polynomial
 * takes half the time. Rounds a little more, so it is for the terms that count least.
 */
export function paired(code: Code, x: Term, coefficients: readonly number[]): Term {
  let terms: Term[] = [];
  for (let i = 0; i < coefficients.length; i += 2) {
    const [low, high] = [coefficients[i]!, coefficients[i + 1]];
    terms.push(high === undefined ? twice(low) : f64x2.add(twice(low), f64x2.mul(x, twice(high))));
  }
  let power = x;
  while (terms.length > 1) {
    power = code.let(f64x2.mul(power, power));
    const above = power;
    const next: Term[] = [];
    for (let i = 0; i < terms.length; i += 2) {
      const high = terms[i + 1];
      next.push(high ? f64x2.add(terms[i]!, f64x2.mul(above, high)) : terms[i]!);
    }
    terms = next;
  }
  return terms[0]!;
}
