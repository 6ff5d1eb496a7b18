import { decimalOf } from '../quantity/decimal.ts';
import { digitsText } from '../quantity/figure.ts';
import type { Band, Quantity } from '../quantity/quantity.ts';
import type { Unit } from '../quantity/unit.ts';
import { parseUnit } from '../quantity/units.ts';
import type { InputValue } from '../spec/board.ts';
import { aligned, differenceUnit, figureText, plainTyped, typedUnitFor } from './figures.ts';

/**
 * How far a value may lie from typical, in the trade's short hand: `±1 %, ±100 ppm/K, age ±0.5 %`, `triple`, `range`.
 * @example toleranceText({ kind: 'part', quantity: parseQuantity('10 kohm ±1 %') }) // '±1 %'
 */
export function toleranceText(value: InputValue): string {
  if (value.kind === 'condition') return value.quantity.min === value.quantity.max ? 'fixed' : 'range';
  if (value.kind === 'exact') return 'exact';
  if (value.kind === 'expression') return 'follows';
  const { quantity, tracks } = value;
  const parts = [
    spread(quantity),
    ...changes(quantity),
    ...(tracks ? [`within ${changeText(relative(tracks.within), percentUnit)} of ${tracks.of.split('.')[1]}`] : []),
  ];
  return parts.filter((part) => part !== '').join(', ') || 'exact';
}

const percentUnit = parseUnit('%');
const ppmPerKelvin = parseUnit('ppm/K');

function spread(quantity: Quantity): string {
  const word = quantity.distribution && quantity.distribution !== usual(quantity) ? ` ${quantity.distribution}` : '';
  if (quantity.form === 'triple') return `triple${word}`;
  if (quantity.form === 'measured') return `sd ${oneSide(quantity.sd!, differenceUnit(quantity.unit))}`;
  if (quantity.min === quantity.max) return '';
  const typed = quantity.typedIn?.tolerance;
  const share = typed?.text === '%' || typed?.text === 'ppm';
  // A share of nothing is meant of one: 0 ±1 % lies from −0.01 to 0.01.
  const band =
    share && quantity.typ !== 0
      ? relative(quantity)
      : { min: quantity.min - quantity.typ, max: quantity.max - quantity.typ };
  return changeText(band, share ? typed : differenceUnit(typed ?? quantity.unit)) + word;
}

const usual = ({ form }: Quantity): string => (form === 'triple' ? 'triangular' : 'normal');

function changes({ drift, driftAbsolute, ageing, typedIn, unit }: Quantity): string[] {
  const drifts = drift
    ? [changeText(drift, typedIn?.drift ?? ppmPerKelvin)]
    : driftAbsolute
      ? [changeText(driftAbsolute, typedIn?.drift ?? unit)]
      : [];
  return [...drifts, ...(ageing ? [`age ${changeText(ageing, typedIn?.ageing ?? percentUnit)}`] : [])];
}

const relative = ({ min, typ, max }: { min: number; typ: number; max: number }): Band => ({
  min: (min - typ) / Math.abs(typ),
  max: (max - typ) / Math.abs(typ),
});

/** `±1 %`, `+80 % −20 %`. */
function changeText({ min, max }: Band, unit: Unit): string {
  const [down, up] = [oneSide(-min, unit), oneSide(max, unit)];
  return down === up ? `±${up}` : [...(max > 0 ? [`+${up}`] : []), ...(min < 0 ? [`\u2212${down}`] : [])].join(' ');
}

/** The typed digits: what binary arithmetic adds beyond the ninth is not what anybody typed. */
function oneSide(size: number, unit: Unit): string {
  const number = digitsText(decimalOf(Number((size / unit.scale).toPrecision(9))));
  return unit.text ? `${number}\u00a0${unit.text}` : number;
}

/**
 * A value with everything said about it, as a parts list has it: `10 kΩ ±1 %, ±100 ppm/K`, `1.19 / 1.21 / 1.23 V`,
 * `3.0 to 4.2 V, typ 3.6`.
 */
export function specifiedAs(value: Exclude<InputValue, { kind: 'expression' }>): string {
  const { quantity } = value;
  const { min, typ, max, unit } = quantity;
  if (quantity.form === 'triple' || quantity.form === 'range') {
    const printed = typedUnitFor([min, typ, max], unit);
    const [low, usual, high] = aligned([min, typ, max], printed) as [string, string, string];
    const text = quantity.form === 'triple' ? `${low} / ${usual} / ${high}` : `${low} to ${high}`;
    const more = [
      quantity.form === 'range' ? `, typ ${usual}` : '',
      ...changes(quantity).map((change) => `, ${change}`),
    ];
    return figureText({ number: text, unit: printed.text }) + more.join('');
  }
  const typical = figureText(plainTyped(typ, typedUnitFor([typ], unit)));
  return value.kind === 'exact' || toleranceText(value) === 'exact' ? typical : `${typical} ${toleranceText(value)}`;
}
