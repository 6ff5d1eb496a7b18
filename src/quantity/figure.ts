import { type Decimal, decimalOf, length, minus, plus, quotient, type Rounding, times, toNumber } from './decimal.ts';
import { prefixFamilies } from './known-units.ts';
import { raisedDigits } from './lex.ts';
import type { Unit } from './unit.ts';

/** A printed value: the digits and the unit behind them. `parseQuantity` reads the two back, joined by a space. */
export interface Figure {
  /** With U+2212 as minus sign, thousands not grouped: `−1.500`, `12000`, `1.250×10⁻⁷`, `∞`. */
  readonly number: string;
  /** Empty for a pure number. */
  readonly unit: string;
}

export interface FigureOptions {
  /** Significant digits, trailing zeros included. Default 4. */
  readonly digits?: number;
  /** `up` is toward +∞, `down` toward −∞: the figure read back is never below, or never above, the value. */
  readonly round?: Rounding;
}

/**
 * Prints a value in SI base units with the prefix that leaves 1 to 999 before the point, where `unit` takes prefixes;
 * else in the unit itself, as `formatTyped` does.
 * @throws RangeError on NaN: a value that is not known has no figure
 * @example formatValue(0.0047, V) // { number: '4.700', unit: 'mV' }
 * @example formatValue(999.96, V) // { number: '1.000', unit: 'kV' }
 */
export function formatValue(si: number, unit: Unit, options: FigureOptions = {}): Figure {
  const family = prefixFamilies.get(unit.text);
  if (!family || !Number.isFinite(si) || si === 0) return formatTyped(si, unit, options);
  const rounded = roundedIn(si, family.find(({ power }) => power === 0)!.unit, options);
  const best = family.findLast(({ power }) => power <= leadingPower(rounded)) ?? family[0]!;
  const shifted = { digits: rounded.digits, exponent: rounded.exponent - best.power };
  return { number: digitsText(shifted), unit: best.unit.text };
}

/**
 * Prints a value in SI base units in exactly the given unit; with a power of ten below a thousandth and from a million.
 * @throws RangeError on NaN
 * @example formatTyped(298.15, degC) // { number: '25.00', unit: '°C' }
 * @example formatTyped(1234567, V) // { number: '1.235×10⁶', unit: 'V' }
 */
export function formatTyped(si: number, unit: Unit, options: FigureOptions = {}): Figure {
  if (Number.isNaN(si)) throw new RangeError(`A value in ${unit.text || 'plain numbers'} is not a number.`);
  if (!Number.isFinite(si)) return { number: si > 0 ? '∞' : '\u2212∞', unit: unit.text };
  return { number: digitsText(roundedIn(si, unit, options)), unit: unit.text };
}

/**
 * The shortest decimal that, read in this unit, is this value to the last bit.
 * @example exactIn(4.7e-6, µF) // 4.7
 */
export function exactIn(si: number, unit: Unit): Decimal {
  return shortest(
    minus(decimalOf(si), decimalOf(unit.offset)),
    decimalOf(unit.scale),
    (read) => inSi(read, unit) === si,
  );
}

/** The value in SI base units of a number typed in this unit, rounded once. */
export const inSi = (typed: Decimal, unit: Unit): number =>
  toNumber(plus(times(typed, decimalOf(unit.scale)), decimalOf(unit.offset)));

/** The quotient with the fewest digits that `fits`. */
export function shortest(dividend: Decimal, divisor: Decimal, fits: (candidate: Decimal) => boolean): Decimal {
  for (let digits = 1; digits <= 40; digits++) {
    const candidate = quotient(dividend, divisor, digits, 'nearest');
    if (fits(candidate)) return candidate;
  }
  throw new RangeError('No decimal of forty digits gives this value.');
}

/** A decimal as printed: plain from a thousandth to a million, else with a power of ten. Keeps all its digits. */
export function digitsText({ digits, exponent }: Decimal): string {
  if (digits === 0n) return '0';
  const sign = digits < 0n ? '\u2212' : '';
  const figures = (digits < 0n ? -digits : digits).toString();
  const leading = leadingPower({ digits, exponent });
  if (leading >= 6 || leading < -3) return `${sign}${pointed(figures, 1)}×10${raisedDigits(leading)}`;
  return sign + pointed(figures, leading + 1);
}

/** The digits with a point after the first `whole` of them, filled up with zeros on either side. */
function pointed(figures: string, whole: number): string {
  if (whole <= 0) return `0.${'0'.repeat(-whole)}${figures}`;
  const padded = figures.padEnd(whole, '0');
  return padded.length === whole ? padded : `${padded.slice(0, whole)}.${padded.slice(whole)}`;
}

function roundedIn(si: number, unit: Unit, { digits = 4, round = 'nearest' }: FigureOptions): Decimal {
  return quotient(minus(decimalOf(si), decimalOf(unit.offset)), decimalOf(unit.scale), digits, round);
}

const leadingPower = ({ digits, exponent }: Decimal): number => length(digits) - 1 + exponent;
