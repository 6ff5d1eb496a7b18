import type { Dimension } from '../quantity/dimension.ts';
import type { Interval } from './interval.ts';

/** What the dimension reading knows of an argument: its dimension, its value where it is a plain number, its text. */
export interface Operand {
  readonly dimension: Dimension | 'truth';
  readonly constant?: number;
  readonly text: string;
}

/**
 * TeX of a term, and how tightly it binds: an operation wraps an argument that binds looser than it needs.
 * `relation` is looser than a sum: comparisons, and `a ∥ b`.
 */
export interface Tex {
  readonly tex: string;
  readonly binds: 'relation' | 'sum' | 'product' | 'power' | 'atom';
  /** What stands first and last, where it decides how a product is written: `2 · 3`, `2 R`. */
  readonly opens?: 'figure' | 'fraction' | undefined;
  readonly closes?: 'figure' | 'unit' | undefined;
  /** What follows a leading minus sign that stands for the whole: a product or fraction takes the sign before itself. */
  readonly minus?: Tex | undefined;
  /** Rows of a distinction of cases, where it is one: as the last case of another it goes on in the same brace. */
  readonly rows?: string | undefined;
}

/**
 * One operation with all its readings side by side. `truth` values (of comparisons) are the numbers 0 and 1.
 * Numbers are in SI base units.
 */
export interface Operation {
  /** Fewest and most arguments. */
  readonly arity: readonly [fewest: number, most: number];
  /** Whether the order of arguments does not matter, so that `a + b` and `b + a` are one computation. */
  readonly commutes?: boolean;
  /** An operation of two arguments that takes more by going from the left, two at a time: `sum` names `add`. */
  readonly pairwise?: string;
  /** How it is called in text, for messages and the guide: `parallel(a, b)`. */
  readonly usage: string;
  readonly says: string;
  /** Dimension of the result. Throws a DimensionError that names the two sides that disagree. */
  dimension(args: readonly Operand[]): Dimension | 'truth';
  value(args: readonly number[]): number;
  /** Encloses every value over the arguments' ranges, rounded outward. */
  range(args: readonly Interval[]): Interval;
  /** Partial derivatives at a point, one for each argument. `value` is the result there. */
  slope(args: readonly number[], value: number): number[];
  /** Enclosures of the partial derivatives over the arguments' ranges (at kinks: of all subgradients). */
  slopeRange(args: readonly Interval[], value: Interval): Interval[];
  /** JavaScript for the value, from JavaScript for the arguments. May use `Math` and nothing else. */
  code(args: readonly string[]): string;
  tex(args: readonly Tex[]): Tex;
}
