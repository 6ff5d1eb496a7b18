import { texUnit } from '../expression/tex-unit.ts';
import { type Decimal, decimalOf, type Rounding } from '../quantity/decimal.ts';
import { type Figure, formatTyped, formatValue, inSi } from '../quantity/figure.ts';
import type { Unit } from '../quantity/unit.ts';
import { parseUnit } from '../quantity/units.ts';

/** A number of the findings, which stands in a printed unit, in SI base units. */
export const toSi = (value: number, unit: Unit): number => inSi(decimalOf(value), unit);

const inUnit = (si: number, unit: Unit): number => (si - unit.offset) / unit.scale;

/** Unit of a difference: kelvin where the quantity is in °C. */
export const differenceUnit = (unit: Unit): Unit => (unit.offset === 0 ? unit : parseUnit('K'));

/** A figure in running text, number and unit kept together: `42.00 V`, `5.3 %`, `0.57`. */
export const figureText = ({ number, unit }: Figure): string => (unit ? `${number}\u00a0${unit}` : number);

/** A figure as KaTeX input: `42.00\,\mathrm{V}`. */
export function figureTex({ number, unit }: Figure): string {
  const digits = number
    .replaceAll('\u2212', '-')
    .replace('∞', '\\infty')
    .replace(/×10(.*)$/, (_, raised: string) => `\\times 10^{${lowered(raised)}}`);
  if (!unit) return digits;
  return `${digits}${unit === '°' ? '' : '\\,'}${texUnit(unit)}`;
}

const lowered = (raised: string): string =>
  [...raised].map((c) => (c === '⁻' ? '-' : String('⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(c)))).join('');

/**
 * A worst case, rounded outward. What differs from a rounded figure by less than a billionth is that figure: the last bits of
 * a calculation must not add a unit to the last digit.
 * @example outward(2.6250000000000004, V, 'up') // { number: '2.625', unit: 'V' }
 */
export function outward(si: number, unit: Unit, round: Rounding, digits = 4): Figure {
  return settled(si, unit, digits) ?? formatValue(si, unit, { digits, round });
}

/** The nearest figure of so many digits, if it is the value but for rounding errors. */
function settled(si: number, unit: Unit, digits: number, format: typeof formatValue = formatValue): Figure | undefined {
  if (!Number.isFinite(si)) return undefined;
  const near = format(si, unit, { digits });
  return Math.abs(printedValue(near) - si) <= 1e-9 * Math.abs(si) ? near : undefined;
}

/** The value of a printed figure, SI base units. `printedValue({ number: '1.5', unit: 'mV' })` → 0.0015 */
export function printedValue({ number, unit }: Figure): number {
  const plain = number.replaceAll('\u2212', '-').replace(/×10(.*)$/, (_, raised: string) => `e${lowered(raised)}`);
  return inSi(decimalOf(plain), parseUnit(unit));
}

/**
 * A value as an engineer would write it: up to four digits, without the zeros that say nothing.
 * @example plain(36, V) // { number: '36', unit: 'V' }
 * @example plain(33.333333, V) // { number: '33.33', unit: 'V' }
 */
export function plain(si: number, unit: Unit, digits = 4): Figure {
  const exact = settled(si, unit, digits);
  return exact ? { ...exact, number: withoutZeros(exact.number) } : formatValue(si, unit, { digits });
}

/** As `plain`, in exactly this unit. */
export function plainTyped(si: number, unit: Unit, digits = 4): Figure {
  const exact = settled(si, unit, digits, formatTyped);
  return exact ? { ...exact, number: withoutZeros(exact.number) } : formatTyped(si, unit, { digits });
}

const withoutZeros = (number: string): string => number.replace(/(\.\d*?)0+(?=×|$)/, '$1').replace(/\.(?=×|$)/, '');

/** Unit with the prefix that suits the largest of several values of one quantity. */
export function unitFor(values: readonly number[], unit: Unit): Unit {
  const largest = Math.max(...values.filter(Number.isFinite).map((si) => Math.abs(si - unit.offset)), 0);
  return largest === 0 ? unit : parseUnit(formatValue(unit.offset + largest, unit).unit);
}

/** As `unitFor`, but the unit as it was typed as long as it suits. */
export function typedUnitFor(values: readonly number[], unit: Unit): Unit {
  const largest = Math.max(...values.filter(Number.isFinite).map((si) => Math.abs(inUnit(si, unit))), 0);
  return largest === 0 || (largest >= 0.01 && largest < 10000) ? unit : unitFor(values, unit);
}

/**
 * Values side by side in one unit, with as many decimals as the finest of them needs with four digits.
 * @param rounds  how each is rounded, where it is not the nearest
 * @example aligned([148500, 150000, 151500], kΩ) // ['148.5', '150.0', '151.5']
 */
export function aligned(values: readonly number[], unit: Unit, rounds: readonly Rounding[] = [], digits = 4): string[] {
  const most = decimalsBeside(values, unit, digits);
  const figures = values.map((si, i) => {
    const exact = settled(si, unit, digits, formatTyped);
    const figure = exact
      ? withoutZeros(exact.number)
      : formatTyped(si, unit, { digits, round: rounds[i] ?? 'nearest' }).number;
    const tooFine = decimalsOf(figure) > most || /×10⁻/.test(figure);
    return tooFine ? fixed(inUnit(si, unit), most, rounds[i] ?? 'nearest') : figure;
  });
  const decimals = Math.max(...figures.map(decimalsOf));
  return figures.map((number) => padded(number, decimals, digits));
}

/** Decimals that make sense beside the largest of the values: two more than its own four digits need. */
function decimalsBeside(values: readonly number[], unit: Unit, digits: number): number {
  const largest = Math.max(...values.map((si) => Math.abs(inUnit(si, unit))).filter(Number.isFinite), 0);
  return largest === 0 ? digits : Math.max(0, digits + 1 - Math.floor(Math.log10(largest)));
}

/**
 * A simulated figure without the digits that another set of boards would change: its last is that of the first digit of
 * the standard deviation.
 * @param sd  in SI base units, as `si`
 * @example steady('2.2514', 2.2514, 0.0237, V) // '2.25'
 */
export function steady(printed: string, si: number, sd: number, unit: Unit): string {
  const decimals = Math.max(0, -Math.floor(Math.log10(sd / unit.scale)));
  return decimals < decimalsOf(printed) ? fixed(inUnit(si, unit), decimals) : printed;
}

const decimalsOf = (number: string): number =>
  /×|∞/.test(number) || !number.includes('.') ? 0 : number.length - number.indexOf('.') - 1;

function padded(number: string, decimals: number, most: number): string {
  const lacking = decimals - decimalsOf(number);
  if (number === '0') return number;
  // More digits would claim what is not known.
  const digits = number.replaceAll(/\D/g, '').replace(/^0+/, '').length;
  const zeros = Math.min(lacking, Math.max(0, most - digits));
  if (/×|∞/.test(number) || zeros <= 0) return number;
  return `${number}${number.includes('.') ? '' : '.'}${'0'.repeat(zeros)}`;
}

/**
 * A number with a fixed count of decimals, rounded as told, never by the binary beneath it.
 * @example fixed(-0.0001, 1, 'down') // '−0.1'
 */
export function fixed(value: number, decimals: number, round: Rounding = 'nearest'): string {
  if (!Number.isFinite(value)) return value > 0 ? '∞' : '\u2212∞';
  const steps = wholeSteps(decimalOf(value), decimals, round);
  const digits = (steps < 0n ? -steps : steps).toString().padStart(decimals + 1, '0');
  const cut = digits.length - decimals;
  return `${steps < 0n ? '\u2212' : ''}${decimals ? `${digits.slice(0, cut)}.${digits.slice(cut)}` : digits}`;
}

/** How many steps of 10^-decimals the number is, rounded. */
function wholeSteps({ digits, exponent }: Decimal, decimals: number, round: Rounding): bigint {
  const shift = exponent + decimals;
  if (shift >= 0) return digits * 10n ** BigInt(shift);
  const step = 10n ** BigInt(-shift);
  const rest = ((digits % step) + step) % step;
  const below = (digits - rest) / step;
  if (rest === 0n) return below;
  const half = digits < 0n ? rest * 2n > step : rest * 2n >= step;
  return round === 'up' || (round === 'nearest' && half) ? below + 1n : below;
}

/** A ratio in per cent with one decimal, rounded toward failure: down. `percent(0.0345)` → `3.4` */
export const percent = (ratio: number, decimals = 1, round: Rounding = 'down'): string => {
  if (!Number.isFinite(ratio)) return fixed(ratio, decimals, round);
  const { digits, exponent } = decimalOf(ratio);
  return fixed(Number(`${digits}e${exponent + 2}`), decimals, round);
};

export type { Figure };
