import type { Unit } from '../quantity/unit.ts';
import { parseUnit } from '../quantity/units.ts';
import type { Variable } from './variable.ts';

/** A number in SI base units as one in `unit`. */
export const inUnit = (si: number, unit: Unit): number => (si - unit.offset) / unit.scale;
/** A difference or deviation: 10 °C of spread is 10 K, whatever the zero of the scale. */
export const differenceInUnit = (si: number, unit: Unit): number => si / unit.scale;

/** Unit in which a difference is printed: kelvin where the quantity is in °C. */
export const differenceUnit = (unit: Unit): Unit => (unit.offset === 0 ? unit : parseUnit('K'));

/** As printed; a pure number is `1`, as in results.json. */
export const printedUnit = (unit: Unit): string => unit.text || '1';

/** A variable's own unit: coefficients are ratios per kelvin, ageing and tracking are ratios. */
export function toPrinted({ what, input }: Variable, si: number): number {
  return what === 'value' ? inUnit(si, input.unit) : si;
}
export function fromPrinted({ what, input }: Variable, printed: number): number {
  return what === 'value' ? printed * input.unit.scale + input.unit.offset : printed;
}
