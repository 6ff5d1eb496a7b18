import type { TapeBuilder } from '../tape-builder.ts';
import { combined, type Factors, factorsOf, productOf } from './factors.ts';
import { joined, sumOf, termsOf } from './terms.ts';

/**
 * `a ± b` with what the two share taken together: terms that meet cancel or add up, and a common factor stands once,
 * `x·y − x·z` as `x·(y − z)`. Undefined where they share nothing.
 */
export function sumTogether(builder: TapeBuilder, a: number, b: number, sign: 1 | -1): number | undefined {
  const left = termsOf(builder, a);
  const right = termsOf(builder, b);
  for (const slot of left.keys()) {
    if (!right.has(slot)) continue;
    const all = joined(left, right, sign);
    if (all) return all.size ? sumOf(builder, all) : builder.constant(0);
  }
  return factoredOut(builder, factorsOf(builder, a), factorsOf(builder, b), sign);
}

function factoredOut(builder: TapeBuilder, a: Factors, b: Factors, sign: 1 | -1): number | undefined {
  const common = new Map<number, number>();
  for (const [slot, exponent] of a) {
    const other = b.get(slot) ?? 0;
    if (exponent * other <= 0 || builder.node(slot).kind === 'constant') continue;
    common.set(slot, Math.abs(exponent) < Math.abs(other) ? exponent : other);
  }
  if (!common.size) return undefined;
  const rest = [a, b].map((side) => productOf(builder, combined(side, common, -1)));
  const sum = builder.call(sign === 1 ? 'add' : 'subtract', rest);
  return productOf(builder, combined(combined(new Map(), common, 1), factorsOf(builder, sum), 1));
}
