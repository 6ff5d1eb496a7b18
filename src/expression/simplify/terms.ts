import type { TapeBuilder } from '../tape-builder.ts';

/** A sum as its terms: slot → how often it is added, none of them 0. Constants are terms like others. */
export type Terms = ReadonlyMap<number, number>;

/** Sums with more terms are taken as one. */
const MOST = 64;
const known = new WeakMap<TapeBuilder, Map<number, Terms>>();

export function termsOf(builder: TapeBuilder, slot: number): Terms {
  let cache = known.get(builder);
  if (!cache) {
    cache = new Map();
    known.set(builder, cache);
  }
  let terms = cache.get(slot);
  if (!terms) {
    terms = split(builder, slot) ?? new Map([[slot, 1]]);
    if (terms.size > MOST) terms = new Map([[slot, 1]]);
    cache.set(slot, terms);
  }
  return terms;
}

function split(builder: TapeBuilder, slot: number): Terms | undefined {
  const node = builder.node(slot);
  if (node.kind !== 'call') return undefined;
  const [a, b] = node.args as [number, number];
  switch (node.operation) {
    case 'add':
      return joined(termsOf(builder, a), termsOf(builder, b), 1);
    case 'subtract':
      return joined(termsOf(builder, a), termsOf(builder, b), -1);
    case 'negate':
      return joined(new Map(), termsOf(builder, a), -1);
    case 'multiply':
      return scaled(builder, a, b) ?? scaled(builder, b, a);
    default:
      return undefined;
  }
}

/** The terms of a sum that is multiplied by a whole number. */
function scaled(builder: TapeBuilder, by: number, sum: number): Terms | undefined {
  const node = builder.node(by);
  if (node.kind !== 'constant' || !Number.isInteger(node.value)) return undefined;
  return joined(new Map(), termsOf(builder, sum), node.value);
}

/** `a + times · b`, or undefined where a count is too large to be exact. */
export function joined(a: Terms, b: Terms, times: number): Terms | undefined {
  const all = new Map(a);
  for (const [slot, count] of b) {
    const sum = (all.get(slot) ?? 0) + count * times;
    if (!Number.isSafeInteger(sum) || !Number.isSafeInteger(count * times)) return undefined;
    if (sum === 0) all.delete(slot);
    else all.set(slot, sum);
  }
  return all;
}

/** The slot of the sum; terms in the order of their slots, those that are taken away last. */
export function sumOf(builder: TapeBuilder, terms: Terms): number {
  const ordered = [...terms].sort(([a], [b]) => a - b);
  const term = ([slot, count]: readonly [number, number]): number =>
    Math.abs(count) === 1 ? slot : builder.call('multiply', [builder.constant(Math.abs(count)), slot]);
  const added = ordered.filter(([, count]) => count > 0).map(term);
  const taken = ordered.filter(([, count]) => count < 0).map(term);
  const start = added.length
    ? added.reduce((a, b) => builder.call('add', [a, b]))
    : builder.call('negate', [taken.shift()!]);
  return taken.reduce((a, b) => builder.call('subtract', [a, b]), start);
}
