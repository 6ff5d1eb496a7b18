import type { TapeBuilder } from '../tape-builder.ts';
import { combined, type Factors, factorsOf, productOf, share } from './factors.ts';
import { joined, sumOf, type Terms, termsOf } from './terms.ts';

/** `a · b` with equal factors as one power, `x·(x·y)` as `x²·y`. Undefined where they share none. */
export function productTogether(builder: TapeBuilder, a: number, b: number): number | undefined {
  const [left, right] = [factorsOf(builder, a), factorsOf(builder, b)];
  return share(left, right) ? productOf(builder, combined(left, right, 1)) : undefined;
}

/**
 * `a / b` with equal factors cancelled, and with a factor that also stands in a sum on the other side taken together:
 * `x·y/(x + y)` is parallel(x, y), `x/(x + y)` is share(x, y), `(x + y)/x` is 1 + y/x. Undefined where none does.
 */
export function quotientTogether(builder: TapeBuilder, a: number, b: number): number | undefined {
  const [over, under] = [factorsOf(builder, a), factorsOf(builder, b)];
  if (share(over, under)) return productOf(builder, combined(over, under, -1));
  return dividerOf(builder, over, under) ?? splitSum(builder, over, under);
}

/** A divisor that is a sum of which the dividend has a term as a factor. */
function dividerOf(builder: TapeBuilder, over: Factors, under: Factors): number | undefined {
  for (const [whole, exponent] of under) {
    const terms = exponent === 1 ? termsOf(builder, whole) : new Map<number, number>();
    if (terms.size < 2) continue;
    for (const [slot, power] of over) {
      if (power < 1 || terms.get(slot) !== 1) continue;
      const other = restOf(builder, terms, slot);
      const both = over.get(other) !== undefined && over.get(other)! >= 1;
      const used = new Map([[slot, 1], ...(both ? ([[other, 1]] as const) : [])]);
      const rest = combined(combined(over, used, -1), combined(under, new Map([[whole, 1]]), -1), -1);
      const part = builder.call(both ? 'parallel' : 'share', [slot, other]);
      return productOf(builder, combined(rest, new Map([[part, 1]]), 1));
    }
  }
  return undefined;
}

/** A dividend that is a sum of which the divisor has a term as a factor. */
function splitSum(builder: TapeBuilder, over: Factors, under: Factors): number | undefined {
  for (const [whole, exponent] of over) {
    const terms = exponent === 1 ? termsOf(builder, whole) : new Map<number, number>();
    if (terms.size < 2) continue;
    for (const [slot, power] of under) {
      if (power < 1 || terms.get(slot) !== 1 || builder.node(slot).kind === 'constant') continue;
      const ratio = builder.call('divide', [restOf(builder, terms, slot), slot]);
      const sum = builder.call('add', [builder.constant(1), ratio]);
      const rest = combined(combined(over, new Map([[whole, 1]]), -1), combined(under, new Map([[slot, 1]]), -1), -1);
      return productOf(builder, combined(rest, factorsOf(builder, sum), 1));
    }
  }
  return undefined;
}

const restOf = (builder: TapeBuilder, terms: Terms, slot: number): number =>
  sumOf(builder, joined(terms, new Map([[slot, 1]]), -1)!);
