import { decimalOf } from '../quantity/decimal.ts';
import { inSi } from '../quantity/figure.ts';
import type { Unit } from '../quantity/unit.ts';

/**
 * A number to twelve digits. Bounds are rounded outward by the last bit of a double; twelve digits keep that noise away
 * from thresholds, where 100 Wh is still a small pack, and from print, where 58.8 V does not become 58.81 V.
 * @example settled(58.80000000000001) // 58.8
 */
export const settled = (value: number): number => (Number.isFinite(value) ? Number(value.toPrecision(12)) : value);

/** A number in `unit`, settled there, in SI base units. Infinity stays. */
export function settledIn(typed: number, unit: Unit): number {
  return Number.isFinite(typed) ? inSi(decimalOf(settled(typed)), unit) : typed;
}
