import { compose } from './compose-unit.ts';
import { type Decimal, decimalOf, length, minus, one, plus, times, toNumber } from './decimal.ts';
import { isPure, same } from './dimension.ts';
import { digitsText, shortest } from './figure.ts';
import { knownUnits } from './known-units.ts';
import { parseUnit } from './parse-unit.ts';
import type { Band, Quantity } from './quantity.ts';
import { isShare } from './read-change.ts';
import type { Unit } from './unit.ts';

const percent = knownUnits.get('%')!;
const ppm = knownUnits.get('ppm')!;
const kelvin = knownUnits.get('K')!;
const ppmPerKelvin = parseUnit('ppm/K');

/** How far up and down, both without sign, as numbers in one unit. */
interface Sides {
  readonly up: Decimal;
  readonly down: Decimal;
}

/**
 * The tolerance in the unit it was typed in, `±1 %`, `+80 % −20 %`, `±5 mV`; where none is known, in percent if that is
 * short. It reads back to the quantity's limits, to the last bit.
 */
export function toleranceText(quantity: Quantity): string {
  const { unit, typ, typedIn } = quantity;
  const typed = typedIn?.tolerance;
  const steps = typ === 0 || unit.offset !== 0 || (typed ? !isShare(typed) : false);
  if (steps) {
    const step = typed && same(typed.dimension, unit.dimension) ? typed : stepUnit(unit);
    return sidesText(stepSides(quantity, step), step);
  }
  const share = typed ?? (unit.text === '%' ? ppm : percent);
  const sides = shareSides(quantity, share);
  const short = length(sides.up.digits) <= 6 && length(sides.down.digits) <= 6;
  if (typed || short || isShare(unit)) return sidesText(sides, share);
  return sidesText(stepSides(quantity, unit), unit);
}

/** `±100 ppm/K`, `±0.5 µV/K`, `age ±0.5 %`; empty where there is none. */
export function driftText({ drift, driftAbsolute, typedIn, unit }: Quantity): string {
  if (drift) return bandText(drift, typedIn?.drift ?? ppmPerKelvin);
  if (driftAbsolute) return bandText(driftAbsolute, typedIn?.drift ?? ownPerKelvin(unit));
  return '';
}

export const ageingText = ({ ageing, typedIn }: Quantity): string =>
  ageing ? `age ${bandText(ageing, typedIn?.ageing ?? percent)}` : '';

/** What differences of a value are given in: of a temperature in °C, kelvin. */
export const stepUnit = (unit: Unit): Unit => (unit.offset === 0 ? unit : kelvin);

/** A difference in SI base units as the shortest number in a unit that reads back. */
export const exactStep = (si: number, unit: Unit): Decimal =>
  shortest(decimalOf(si), decimalOf(unit.scale), (step) => toNumber(times(step, decimalOf(unit.scale))) === si);

const ownPerKelvin = (unit: Unit): Unit =>
  isPure(unit.dimension)
    ? ppmPerKelvin
    : compose([
        { unit, power: 1 },
        { unit: kelvin, power: -1 },
      ]);

function stepSides({ min, typ, max }: Quantity, unit: Unit): Sides {
  const value = decimalOf(typ);
  const scale = decimalOf(unit.scale);
  const to = (limit: number, sign: Decimal): Decimal =>
    shortest(
      times(minus(decimalOf(limit), value), sign),
      scale,
      (side) => toNumber(plus(value, times(times(side, scale), sign))) === limit,
    );
  return { up: to(max, one), down: to(min, minusOne) };
}

function shareSides({ min, typ, max }: Quantity, unit: Unit): Sides {
  const value = decimalOf(typ);
  const scale = decimalOf(unit.scale);
  const to = (limit: number, sign: Decimal): Decimal =>
    shortest(
      times(minus(decimalOf(limit), value), sign),
      times(value, scale),
      (side) => toNumber(times(value, plus(one, times(times(side, scale), sign)))) === limit,
    );
  const [grown, shrunk] = typ > 0 ? [max, min] : [min, max];
  return { up: to(grown, one), down: to(shrunk, minusOne) };
}

const minusOne = minus({ digits: 0n, exponent: 0 }, one);

const bandText = ({ min, max }: Band, unit: Unit): string =>
  sidesText({ up: exactStep(max, unit), down: exactStep(-min, unit) }, unit);

function sidesText({ up, down }: Sides, unit: Unit): string {
  const text = (side: Decimal) => `${digitsText(side)} ${unit.text}`.trim();
  return text(up) === text(down) ? `±${text(up)}` : `+${text(up)} \u2212${text(down)}`;
}
