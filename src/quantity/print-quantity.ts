import { type Decimal, decimalOf, minus, quotient, type Rounding } from './decimal.ts';
import { same } from './dimension.ts';
import { digitsText, exactIn, type Figure, inSi } from './figure.ts';
import { ageingText, driftText, exactStep, stepUnit, toleranceText } from './print-changes.ts';
import type { Quantity } from './quantity.ts';
import type { Unit } from './unit.ts';

/** A quantity as a row of a table of inputs prints it: three figures in one unit, and what else was said of it. */
export interface PrintedQuantity {
  readonly value: Figure;
  readonly min: Figure;
  readonly max: Figure;
  /** `±1 % ±100 ppm/K age ±0.5 %`, `triple`, `range`, `sd 0.05 mΩ`; empty for a number that is exact. */
  readonly tolerance: string;
}

/**
 * A quantity for print. The value stands as typed, to its last digit; the limits are cut to six digits, outward.
 * Of a value 0 the figures take the unit of its tolerance: `0 V ±5 mV` lies between −5 mV and 5 mV.
 * @example formatQuantity(parseQuantity('150 kohm ±1 %')).max // { number: '151.5', unit: 'kΩ' }
 */
export function formatQuantity(quantity: Quantity): PrintedQuantity {
  const unit = commonUnit(quantity);
  const figure = (value: Decimal): Figure => ({ number: digitsText(value), unit: unit.text });
  return {
    value: figure(exactIn(quantity.typ, unit)),
    min: figure(cut(quantity.min, unit, 'down')),
    max: figure(cut(quantity.max, unit, 'up')),
    tolerance: spreadText(quantity),
  };
}

/**
 * A quantity in one line that `parseQuantity` reads back to the same numbers, to the last bit.
 * @example printQuantity(parseQuantity('10kohm +/-1%')) // '10 kΩ ±1 %'
 */
export function printQuantity(quantity: Quantity): string {
  const { form, unit, min, typ, max } = quantity;
  const number = (si: number) => digitsText(exactIn(si, unit));
  const measure = (si: number) => `${number(si)} ${unit.text}`.trim();
  switch (form) {
    case 'number':
      return measure(typ);
    case 'tolerance':
      return `${measure(typ)} ${spreadText(quantity)}`;
    case 'triple':
      return joined(`${number(min)} / ${number(typ)} / ${measure(max)}`, changesText(quantity));
    case 'measured':
      return `${measure(typ)} ${spreadText(quantity)}`;
    case 'range':
      return `${measure(min)} to ${measure(max)} typ ${measure(typ)}`;
    default:
      return form satisfies never;
  }
}

function spreadText(quantity: Quantity): string {
  const { form, unit, sd, min, typ, max } = quantity;
  switch (form) {
    case 'number':
      return '';
    case 'tolerance': {
      const exact = min === typ && max === typ && !quantity.typedIn?.tolerance;
      return joined(exact ? '' : toleranceText(quantity), changesText(quantity));
    }
    case 'measured':
      return joined(`sd ${digitsText(exactStep(sd!, unit))} ${stepUnit(unit).text}`.trim(), changesText(quantity));
    default:
      return joined(form, changesText(quantity));
  }
}

/** Drift, ageing and a distribution that is not the usual one. */
function changesText(quantity: Quantity): string {
  const usual = quantity.form === 'triple' ? 'triangular' : 'normal';
  const word = quantity.distribution === usual ? undefined : quantity.distribution;
  return joined(driftText(quantity), ageingText(quantity), word ?? '');
}

const joined = (...parts: string[]): string => parts.filter((part) => part !== '').join(' ');

function commonUnit({ unit, typ, typedIn }: Quantity): Unit {
  const tolerance = typedIn?.tolerance;
  return typ === 0 && tolerance && unit.offset === 0 && same(tolerance.dimension, unit.dimension) ? tolerance : unit;
}

const printedDigits = 6;
const noise = 1e-15;

/** At most six digits without trailing zeros: the value where they hold it but for a double's noise, else outward. */
function cut(si: number, unit: Unit, outward: Rounding): Decimal {
  const typed = minus(decimalOf(si), decimalOf(unit.offset));
  const rounded = (rounding: Rounding) => quotient(typed, decimalOf(unit.scale), printedDigits, rounding);
  const near = rounded('nearest');
  return withoutZeros(Math.abs(inSi(near, unit) - si) <= noise * Math.abs(si) ? near : rounded(outward));
}

function withoutZeros({ digits, exponent }: Decimal): Decimal {
  let zeros = 0;
  for (; digits !== 0n && digits % 10n === 0n; digits /= 10n) zeros += 1;
  return { digits, exponent: exponent + zeros };
}
