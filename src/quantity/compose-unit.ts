import { type Decimal, decimalOf, one, quotient, times, toNumber } from './decimal.ts';
import { type Dimension, multiplied, pureNumber, raised } from './dimension.ts';
import { raisedDigits } from './lex.ts';
import type { Unit } from './unit.ts';

/** A unit raised to a power, one factor of a product. */
export interface Factor {
  readonly unit: Unit;
  readonly power: number;
}

/** The pure number's unit: no text, scale 1. */
export const pureUnit: Unit = { text: '', dimension: pureNumber, scale: 1, offset: 0 };

/**
 * The product of some units. A lone one stays as it is; within a product a degree Celsius is a kelvin's difference.
 * @example compose([{ unit: K, power: 1 }, { unit: W, power: -1 }]).text // 'K/W'
 */
export function compose(factors: readonly Factor[]): Unit {
  const merged = mergePowers(factors);
  if (merged.length === 0) return pureUnit;
  if (merged.length === 1 && merged[0]!.power === 1) return merged[0]!.unit;
  const dimension = merged.reduce<Dimension>((d, f) => multiplied(d, raised(f.unit.dimension, f.power)), pureNumber);
  return { text: productText(merged), dimension, scale: productScale(merged), offset: 0 };
}

function mergePowers(factors: readonly Factor[]): Factor[] {
  const powers = new Map<string, Factor>();
  for (const { unit, power } of factors)
    powers.set(unit.text, { unit, power: power + (powers.get(unit.text)?.power ?? 0) });
  return [...powers.values()].filter(({ power }) => power !== 0);
}

/** Whole powers are multiplied as decimals, so that `V/us` is 1e6 to the last digit. */
function productScale(factors: readonly Factor[]): number {
  let over = one;
  let under = one;
  let rooted = 1;
  for (const { unit, power } of factors) {
    const scale = decimalOf(unit.scale);
    if (!Number.isInteger(power)) rooted *= unit.scale ** power;
    else if (power > 0) over = times(over, wholePower(scale, power));
    else under = times(under, wholePower(scale, -power));
  }
  return toNumber(quotient(over, under, 20, 'nearest')) * rooted;
}

const wholePower = (a: Decimal, power: number): Decimal => ({
  digits: a.digits ** BigInt(power),
  exponent: a.exponent * power,
});

function productText(factors: readonly Factor[]): string {
  const over = factors.filter(({ power }) => power > 0).map(factorText);
  const under = factors.filter(({ power }) => power < 0).map(({ unit, power }) => factorText({ unit, power: -power }));
  const numerator = over.length > 0 ? over.join('·') : '1';
  if (under.length === 0) return numerator;
  return under.length === 1 ? `${numerator}/${under[0]}` : `${numerator}/(${under.join('·')})`;
}

function factorText({ unit, power }: Factor): string {
  if (power === 1) return unit.text;
  if (power === 0.5) return `√${unit.text}`;
  return Number.isInteger(power) ? unit.text + raisedDigits(power) : `${unit.text}^${power}`;
}
