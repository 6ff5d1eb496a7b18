import type { Code, Term } from '../../../expression/wasm/code.ts';
import { load } from '../../../expression/wasm/memory.ts';
import { bits, f64x2, i64x2, integer, pattern, shuffleWords, twice, wordOf } from '../../../expression/wasm/vectors.ts';
import { partsPerDoubling } from '../normal-table.ts';

/**
 * Code for the inverses of the distributions, for pairs of boards: the same arithmetic as `fill`. Each gives the steps
 * on the way from a word to a value, which take a loop each. Constants are put into registers once, ahead of the loops.
 */
export type Step = (from: Term) => Term;

/** The chance that a word stands for. */
function chances(code: Code): Step {
  const [part, middle] = [2 ** -32, 0.5 + 2 ** -33].map((c) => code.let(twice(c)));
  return (word) => f64x2.add(f64x2.mul(word, part!), middle!);
}

export function uniform(code: Code, [min, width]: readonly Term[]): Step[] {
  const chance = chances(code);
  return [(word) => f64x2.add(min!, f64x2.mul(width!, chance(word)))];
}

export function triangular(code: Code, [min, max, split, rising, falling]: readonly Term[]): Step[] {
  const chance = chances(code);
  const one = code.let(twice(1));
  return [
    (word) => {
      const u = code.let(chance(word));
      const rises = code.let(f64x2.lt(u, split!));
      const part = bits.select(u, f64x2.sub(one, u), rises);
      const root = code.let(f64x2.sqrt(f64x2.mul(part, bits.select(rising!, falling!, rises))));
      return bits.select(f64x2.add(min!, root), f64x2.sub(max!, root), rises);
    },
  ];
}

/** Bytes of one part of the table, and the bits of a double below those that choose the part. */
const partBytes = 32;
const lowBits = 41;

/**
 * Chances are taken times this power of two, at which the upper bits of a double, from its exponent down, are the
 * number of a part of the table right away, but for these first ones.
 */
const small = 2 ** -988;
const partsBefore = 2 * partsPerDoubling;
/** The least address that the table may have. */
export const leastTable = partsBefore * partBytes;

/** First the chance from the nearer end, with the sign of the side; then the table. */
export function normal(code: Code, table: number, [typ, left, right, scale]: readonly Term[]): Step[] {
  const minusLeft = code.let(f64x2.neg(left!));
  const opposite = code.let(bits.xor(minusLeft, right!));
  const [half, middle, one] = [0.5, 0.5 * small, 1].map((c) => code.let(twice(c)));
  const step = code.let(f64x2.mul(scale!, twice(small)));
  const sign = code.let(pattern(0x80000000));
  const partMask = code.let(pattern(0, -partBytes));
  const mantissa = code.let(pattern(2 ** (lowBits + 5 - 32) - 1, -1));
  const chance: Step = (word) => {
    const above = code.let(f64x2.add(word, half!));
    return bits.or(f64x2.sub(middle!, f64x2.mul(f64x2.abs(above), step)), bits.and(above, sign));
  };
  const value: Step = (signed) => {
    const p = code.let(bits.andnot(signed, sign));
    const part = code.let(bits.and(i64x2.shrU(p, integer(lowBits)), partMask));
    const m = code.let(bits.or(bits.and(p, mantissa), one!));
    const coefficients = [0, 16].flatMap((offset) => {
      const place = table - partsBefore * partBytes + offset;
      const [x, y] = [0, 2].map((lane) => code.let(load(wordOf(part, lane), place)));
      return [shuffleWords(x!, y!, [0, 1, 4, 5]), shuffleWords(x!, y!, [2, 3, 6, 7])];
    });
    const z = coefficients.reduceRight((sum, c) => f64x2.add(f64x2.mul(sum, m), c));
    const spread = bits.xor(right!, bits.and(opposite, f64x2.lt(signed, twice(0))));
    return f64x2.add(typ!, f64x2.mul(z, spread));
  };
  return [chance, value];
}
