import type { Unit } from '../quantity/unit.ts';

/** Offsets into the text of the expression: first character, and the one after the last. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** An equation as plain data. Operators are calls too: `a + b` is `{ kind: 'call', operation: 'add', args: [a, b] }`. */
export type Tree =
  /** A number, with the unit that was typed behind it; `value` is in SI base units. */
  | { readonly kind: 'number'; readonly value: number; readonly unit?: Unit; readonly text: string; readonly at: Span }
  /** A name: `R_top`, `pack.V_bat`. */
  | { readonly kind: 'symbol'; readonly name: string; readonly at: Span }
  | { readonly kind: 'call'; readonly operation: string; readonly args: readonly Tree[]; readonly at: Span };
