import type { TapeBuilder } from '../tape-builder.ts';

/** A product as its factors: slot → whole exponent, none of them 0. */
export type Factors = ReadonlyMap<number, number>;

/** Products with more factors are taken as one: what could cancel in them is not worth the search. */
const MOST = 32;
const known = new WeakMap<TapeBuilder, Map<number, Factors>>();

/** What `slot` is a product of; itself, where it is none. A sign is the factor −1. */
export function factorsOf(builder: TapeBuilder, slot: number): Factors {
  let cache = known.get(builder);
  if (!cache) {
    cache = new Map();
    known.set(builder, cache);
  }
  let factors = cache.get(slot);
  if (!factors) {
    factors = split(builder, slot);
    if (factors.size > MOST) factors = new Map([[slot, 1]]);
    cache.set(slot, factors);
  }
  return factors;
}

function split(builder: TapeBuilder, slot: number): Factors {
  const node = builder.node(slot);
  if (node.kind !== 'call') return new Map([[slot, 1]]);
  const [a, b] = node.args as [number, number];
  switch (node.operation) {
    case 'multiply':
      return combined(factorsOf(builder, a), factorsOf(builder, b), 1);
    case 'divide':
      return combined(factorsOf(builder, a), factorsOf(builder, b), -1);
    case 'square':
      return combined(new Map(), factorsOf(builder, a), 2);
    case 'negate':
      return combined(factorsOf(builder, a), new Map([[builder.constant(-1), 1]]), 1);
    case 'power': {
      const exponent = builder.node(b);
      const whole = exponent.kind === 'constant' && Number.isInteger(exponent.value) && Math.abs(exponent.value) <= 8;
      return whole ? combined(new Map(), factorsOf(builder, a), exponent.value) : new Map([[slot, 1]]);
    }
    default:
      return new Map([[slot, 1]]);
  }
}

/** `a · b^times`. */
export function combined(a: Factors, b: Factors, times: number): Factors {
  const all = new Map(a);
  for (const [slot, exponent] of b) {
    const sum = (all.get(slot) ?? 0) + exponent * times;
    if (sum === 0) all.delete(slot);
    else all.set(slot, sum);
  }
  return all;
}

export const share = (a: Factors, b: Factors): boolean => {
  for (const slot of a.keys()) if (b.has(slot)) return true;
  return false;
};

/** The slot of the product; factors in the order of their slots, so that equal products are one. */
export function productOf(builder: TapeBuilder, factors: Factors): number {
  const over: number[] = [];
  const under: number[] = [];
  for (const [slot, exponent] of [...factors].sort(([a], [b]) => a - b)) {
    const size = Math.abs(exponent);
    const powered = size === 1 ? slot : builder.call('power', [slot, builder.constant(size)]);
    (exponent > 0 ? over : under).push(powered);
  }
  const top = over.length ? multiplied(builder, over) : builder.constant(1);
  return under.length ? builder.call('divide', [top, multiplied(builder, under)]) : top;
}

const multiplied = (builder: TapeBuilder, slots: readonly number[]): number =>
  slots.reduce((a, b) => builder.call('multiply', [a, b]));
