import type { Interval } from './interval.ts';

/**
 * A tape: equations flattened into one list of steps, each computed once however often it is used. The numeric
 * readings (value, interval, slope, kernel) run along it; typesetting and dimensions read the trees.
 * Slots 0 … inputs.length−1 hold the inputs, the steps follow in order. Every argument stands before its step.
 */
export interface Tape {
  readonly inputs: readonly string[];
  readonly steps: readonly Step[];
}

export type Step =
  /** `within` holds the exact number where the double is not it: π, or 1/3 that was calculated beforehand. */
  | { readonly constant: number; readonly within?: Interval }
  | { readonly operation: string; readonly args: readonly number[] };
