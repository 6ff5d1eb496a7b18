import type { Dimension } from './dimension.ts';

/** A unit: a number times `scale`, plus `offset`, is the same quantity in SI base units. Only °C has an offset. */
export interface Unit {
  /** As printed: `kΩ`, `°C`, `K/W`, `%`. */
  readonly text: string;
  readonly dimension: Dimension;
  readonly scale: number;
  readonly offset: number;
}
