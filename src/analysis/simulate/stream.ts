/** What tells the numbers of one variable from those of all others. */
export interface Key {
  readonly first: number;
  readonly second: number;
}

/**
 * Mixes the bits of a whole number so that each bit that goes in turns about half of those that come out. One-to-one.
 * Source: C. Wellons, Prospecting for hash functions (2018): shifts 16, 15, 16 and these multipliers, of low bias.
 */
export function mix(value: number): number {
  const h = almostMixed(value);
  return h ^ (h >>> 16);
}

export const multipliers = [0x7feb352d, 0x846ca68b] as const;

/** `mix` without its last step, which would only better the lowest bits. */
function almostMixed(value: number): number {
  let h = value | 0;
  h ^= h >>> 16;
  h = Math.imul(h, multipliers[0]);
  h ^= h >>> 15;
  return Math.imul(h, multipliers[1]);
}

/** 2³² over the golden ratio. */
export const golden = 0x9e3779b9 | 0;

/** The key of a variable by its name: 64 bits, so that no two of a board will meet. */
export function keyOf(seed: number, name: string): Key {
  let [first, second] = [mix(seed ^ golden), mix(seed + 0x85ebca6b)];
  for (let i = 0; i < name.length; i++) {
    first = mix(first ^ (name.charCodeAt(i) + Math.imul(i, golden)));
    second = mix(second + Math.imul(name.charCodeAt(i) + 1, 0xc2b2ae35));
  }
  return { first, second };
}

/** What all variables of a trial start from. */
export const baseOf = (trial: number): number => mix(trial + golden);

/**
 * Thirty-two chance bits for a variable on a trial, as a whole number with its sign. A number by position: it depends
 * on seed, name and trial alone, so that threads, block sizes and other parts change nothing.
 */
export const wordAt = ({ first, second }: Key, base: number): number => almostMixed((base ^ first) + second);

/** The chance that a word stands for: a midpoint of one of 2³² equal parts of 0 … 1. */
export const chanceOf = (word: number): number => word * 2 ** -32 + (0.5 + 2 ** -33);
