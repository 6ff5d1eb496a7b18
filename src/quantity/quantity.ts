import type { Unit } from './unit.ts';

/** How a part's value is spread between its limits when boards are simulated. */
export type Distribution = 'normal' | 'uniform' | 'triangular';

/** A change that may lie anywhere between two ends; it holds 0. */
export interface Band {
  readonly min: number;
  readonly max: number;
}

/**
 * One value as an engineer types it, with everything said about how far it may lie from nominal.
 * Numbers are in SI base units; `unit` is the unit that was typed and is used for print.
 *
 * - `number`    `10`, `3.3 V`: exact
 * - `tolerance` `10 nF ±10 %`, `100 uF +80 % -20 %`, `0 V ±5 mV`, and `10 kohm ±50 ppm/K`, where `min = typ = max`
 * - `triple`    `4 / 5 / 6 uA`: data-sheet minimum, typical, maximum
 * - `measured`  `2.1 mohm sd 0.05 mohm`: mean and standard deviation
 * - `range`     `3.0 V to 4.2 V typ 3.6 V`: a condition that must be endured; `typ` left out is the middle
 *
 * What one board's part is worth at the temperature T, after its life:
 * `(initial × (1 + drift·(T − 25 °C)) + driftAbsolute·(T − 25 °C)) × (1 + ageing)`, with `initial` between `min` and
 * `max`. Relative changes scale the magnitude: `-5 V ±1 %` lies between −5.05 V and −4.95 V.
 */
export interface Quantity {
  readonly form: 'number' | 'tolerance' | 'triple' | 'measured' | 'range';
  readonly text: string;
  readonly unit: Unit;
  /** Limits before drift and ageing, `min <= typ <= max`. For `measured`, four standard deviations either side. */
  readonly min: number;
  readonly typ: number;
  readonly max: number;
  /** Standard deviation of a `measured` value. */
  readonly sd?: number;
  /** Absent for `number`, `measured` and `range`. */
  readonly distribution?: Distribution;
  /** Temperature coefficient, 1/K: it may lie anywhere in this band, which holds 0. */
  readonly drift?: Band;
  /**
   * Drift stated in the value's own unit, SI base units per kelvin: `0 V ±1 mV ±0.5 uV/K`. Of a pure number that is 0,
   * such as a gain error, `±10 ppm/K` is such a drift too. A quantity has `drift` or `driftAbsolute`, never both.
   */
  readonly driftAbsolute?: Band;
  /** Change over life, as a ratio (0.005 is half a percent): it may lie anywhere in this band, which holds 0. */
  readonly ageing?: Band;
  /** The units that the changes were typed in, for print alone: `±0.1 %` stays apart from `±1000 ppm` and `±1 mV`. */
  readonly typedIn?: { readonly tolerance?: Unit; readonly drift?: Unit; readonly ageing?: Unit };
}
