import type { Quantity } from '../quantity/quantity.ts';
import type { Input } from '../spec/board.ts';

/**
 * One thing that may lie anywhere in a range, independent of all others: a condition, a part's value, its temperature
 * coefficient, its ageing, or how far it strays from a part that it tracks. SI base units.
 */
export interface Variable {
  /** `pack.V_cell`, `bus_sense.R_bot`, `bus_sense.R_bot drift`; the second of three alike is `stage.R_on #2`. */
  readonly id: string;
  /** `exact` ones do not vary: they are parts and ratings whose room is sought. */
  readonly role: 'condition' | 'part' | 'exact';
  readonly what: 'value' | 'drift' | 'ageing' | 'tracking';
  readonly min: number;
  readonly typ: number;
  readonly max: number;
  readonly draw: Draw;
  readonly input: Input;
  /** 1 for the first or only one of its kind on the board. */
  readonly instance: number;
}

/** How the value is drawn when boards are simulated. Conditions are never drawn: they are held at a corner. */
export type Draw =
  | { readonly kind: 'held' }
  /** Normal on each side of typ with its limit at three standard deviations, drawn again beyond; either side equally likely. */
  | { readonly kind: 'normal' }
  | { readonly kind: 'uniform' }
  | { readonly kind: 'triangular' }
  /** Normal and not cut off. */
  | { readonly kind: 'measured'; readonly sd: number };

/** The variable for the value of a part before drift and ageing. */
export function drawOf(quantity: Quantity): Draw {
  if (quantity.form === 'measured') return { kind: 'measured', sd: quantity.sd! };
  if (quantity.min === quantity.max) return { kind: 'held' };
  return { kind: quantity.distribution ?? 'normal' };
}
