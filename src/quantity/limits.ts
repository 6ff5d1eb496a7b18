import { type Decimal, decimalOf, minus, one, plus, times, toNumber } from './decimal.ts';

/** A value's limits in SI base units. */
export interface Limits {
  readonly min: number;
  readonly max: number;
}

/** Limits for a change by a share of the value. A negative value grows downward: −5 V +10 % is −5.5 V. */
export function limitsOfShare(typ: number, up: Decimal, down: Decimal): Limits {
  const value = decimalOf(typ);
  const grown = toNumber(times(value, plus(one, up)));
  const shrunk = toNumber(times(value, minus(one, down)));
  return { min: Math.min(grown, shrunk), max: Math.max(grown, shrunk) };
}

/** Limits for a change in the value's own dimension, SI base units. */
export function limitsOfStep(typ: number, up: Decimal, down: Decimal): Limits {
  const value = decimalOf(typ);
  return { min: toNumber(minus(value, down)), max: toNumber(plus(value, up)) };
}
