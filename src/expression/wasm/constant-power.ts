import type { Code, Term } from './code.ts';
import { f64x2, twice } from './vectors.ts';

/** Largest exponent that is multiplied out: each product adds half a unit in the last place, so 16 stays within 4. */
const LARGEST = 16;

/**
 * a to a whole or half power by products and one root, which is faster than `power` and as right for small exponents;
 * undefined for other exponents.
 */
export function constantPower(code: Code, a: Term, exponent: number): Term | undefined {
  const size = Math.abs(exponent);
  if (size > LARGEST || !Number.isInteger(2 * size)) return undefined;
  // The root of −∞ is not what a power of it is; a power of −0 has no sign.
  if (!Number.isInteger(size)) return undefined;
  if (size === 0) return twice(1);
  const base = exponent < 0 ? code.let(f64x2.div(twice(1), a)) : a;
  let result: Term | undefined;
  let square = base;
  for (let rest = size; ; ) {
    if (rest % 2 === 1) result = result ? code.let(f64x2.mul(result, square)) : square;
    rest = Math.floor(rest / 2);
    if (rest === 0) break;
    square = code.let(f64x2.mul(square, square));
  }
  return result;
}
