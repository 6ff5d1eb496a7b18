import { inUnit } from '../analysis/units.ts';
import type { Interval } from '../expression/interval.ts';
import type { Tree } from '../expression/tree.ts';
import { isPure } from '../quantity/dimension.ts';
import { digitsText, exactIn, type Figure, formatTyped, formatValue } from '../quantity/figure.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { Unit } from '../quantity/unit.ts';
import { parseUnit } from '../quantity/units.ts';
import type { HazardQuantity } from './safety-data.ts';
import { settledIn } from './settled.ts';
import { isPoint } from './truths.ts';

/** Between a number and its unit: the two are never parted at the end of a line. */
const NO_BREAK = '\u00a0';
const [seconds, minutes, hours, days] = ['s', 'min', 'h', 'd'].map(parseUnit) as [Unit, Unit, Unit, Unit];

/**
 * What is known of a quantity, as printed: rounded toward danger where the number is known, `58.8 V or more` where only
 * that is certain, `without limit`, empty where nothing is known.
 * @example figureOf(E_cap, point(0.41234)) // '413 mJ'
 */
export function figureOf(quantity: HazardQuantity, range: Interval): string {
  const { danger, digits } = quantity;
  if (range.lo === Infinity) return 'without limit';
  if (isPoint(range)) return printed(range.lo, quantity, digits, danger);
  if (danger === 'up') return range.lo > 0 ? `${printed(range.lo, quantity, digits, 'down')} or more` : '';
  return range.hi < Infinity ? `${printed(range.hi, quantity, digits, 'up')} or less` : '';
}

/**
 * The same with as many digits as it takes to keep the number on its own side of a limit: 0.9996 J is not printed as
 * 1.00 J beside "below 1 J".
 */
export function truthfulFigure(quantity: HazardQuantity, range: Interval, limit: Interval): string {
  if (!isPoint(range) || !isPoint(limit) || !Number.isFinite(range.lo)) return figureOf(quantity, range);
  const side = Math.sign(range.lo - limit.lo);
  for (let digits = quantity.digits; digits < 15; digits++) {
    const text = printed(range.lo, quantity, digits, quantity.danger);
    if (Math.sign(parseQuantity(text).typ - limit.lo) === side) return text;
  }
  return printed(range.lo, quantity, 15, quantity.danger);
}

/** A number of a trigger as it was typed, with its unit as printed: `65 °C`. */
export function typedFigure({ value, unit, text }: Tree & { kind: 'number' }): string {
  return unit ? joined({ number: digitsText(exactIn(value, unit)), unit: unit.text }) : text;
}

function printed(exact: number, { unit }: HazardQuantity, digits: number, round: 'up' | 'down'): string {
  const si = settledIn(inUnit(exact, unit), unit);
  if (unit.text === 's') return joined(formatTyped(si, timeUnit(si), { digits, round }));
  if (isPure(unit.dimension))
    return formatTyped(si, unit, { digits, round })
      .number.replace(/(\.\d*?)0+$/, '$1')
      .replace(/\.$/, '');
  return joined(formatValue(si, unit, { digits, round }));
}

/** Nobody counts thousands of seconds. Short times stay in seconds, never in milliseconds. */
const timeUnit = (si: number): Unit => (si < 300 ? seconds : si < 7200 ? minutes : si < 172_800 ? hours : days);

const joined = ({ number, unit }: Figure): string => (unit ? number + NO_BREAK + unit : number);
