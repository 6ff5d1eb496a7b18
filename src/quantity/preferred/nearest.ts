import { type Series, seriesNamed } from './series.ts';

/** Where a value stands in a series: the values of it just below and above, both the value itself where it belongs to it. */
export interface Neighbours {
  readonly below: number;
  readonly above: number;
}

/** Binary arithmetic between a typed value and one of a table; the finest steps are a thousand times as wide. */
const blur = 1e-6;

/**
 * Values of a series next to `value`, which is positive.
 * @example neighbours(333, seriesNamed('E96')) // { below: 332, above: 340 }
 */
export function neighbours(value: number, series: Series): Neighbours {
  // The widest step of all is from 1 to 2.2.
  const near = within(value, value / 3, value * 3, series);
  const same = near.find((one) => Math.abs(one / value - 1) <= blur);
  if (same !== undefined) return { below: same, above: same };
  return { below: near.findLast((one) => one < value)!, above: near.find((one) => one > value)! };
}

/** Whether `value` is one of the series, to a millionth. */
export function belongs(value: number, series: Series): boolean {
  const { below, above } = neighbours(value, series);
  return below === above;
}

/**
 * The value of the series at the least ratio from `value`; the lower of two at the same ratio.
 * @example nearest(4180, seriesNamed('E96')) // 4220
 */
export function nearest(value: number, series: Series): number {
  const { below, above } = neighbours(value, series);
  return value / below <= above / value ? below : above;
}

/** Every value of the series from `from` to `to`, rising. */
export const between = (from: number, to: number, series: Series): number[] => within(from, from, to, series);

function within(scale: number, from: number, to: number, { values, parts }: Series): number[] {
  const decade = Math.floor(Math.log10(scale));
  const last = Math.floor(Math.log10(to)) + 1;
  const found: number[] = [];
  for (let power = Math.min(decade, Math.floor(Math.log10(from))) - 1; power <= last; power++)
    for (const one of values) {
      const value = inDecade(one, parts, power);
      if (value >= from * (1 - blur) && value <= to * (1 + blur)) found.push(value);
    }
  return found;
}

/** One division or one multiplication, so that 47 of 10 in the decade of 1000 is 4700 to the bit. */
function inDecade(one: number, parts: number, power: number): number {
  const exponent = power - Math.log10(parts);
  return exponent >= 0 ? one * 10 ** exponent : one / 10 ** -exponent;
}

/** Whether a value stands in E24, whose values are also sold at every tighter tolerance. */
export const inE24 = (value: number): boolean => belongs(value, seriesNamed('E24'));
