/**
 * Exact decimal numbers, digits × 10^exponent. What a person types and reads is decimal, and 4.7 × 1e-6 in binary
 * is not 4.7e-6: all conversion between typed units, SI numbers and printed digits is done here and rounded once.
 */
export interface Decimal {
  readonly digits: bigint;
  readonly exponent: number;
}

export type Rounding = 'nearest' | 'up' | 'down';

/** The decimal that `text` spells, or the shortest one that reads back as the number. */
export function decimalOf(value: number | string): Decimal {
  const [mantissa, exponent = '0'] = String(value).split('e') as [string, string?];
  const point = mantissa.indexOf('.');
  const decimals = point < 0 ? 0 : mantissa.length - point - 1;
  return { digits: BigInt(mantissa.replace('.', '')), exponent: Number(exponent) - decimals };
}

export const one: Decimal = { digits: 1n, exponent: 0 };

export function times(a: Decimal, b: Decimal): Decimal {
  return { digits: a.digits * b.digits, exponent: a.exponent + b.exponent };
}

export function plus(a: Decimal, b: Decimal): Decimal {
  const exponent = Math.min(a.exponent, b.exponent);
  const aligned = (x: Decimal) => x.digits * 10n ** BigInt(x.exponent - exponent);
  return { digits: aligned(a) + aligned(b), exponent };
}

export const negative = (a: Decimal): Decimal => ({ digits: -a.digits, exponent: a.exponent });
export const minus = (a: Decimal, b: Decimal): Decimal => plus(a, negative(b));

/** The nearest double. Infinite when too large, 0 when too small. */
export const toNumber = (a: Decimal): number => Number(`${a.digits}e${a.exponent}`);

/**
 * a ÷ b to so many significant digits; the result has exactly that many, unless it is 0.
 * `up` is toward +∞ and `down` toward −∞; `nearest` takes halves away from zero.
 * @example quotient(decimalOf(2), decimalOf(3), 3, 'nearest') // { digits: 667n, exponent: -3 }
 */
export function quotient(a: Decimal, b: Decimal, digits: number, rounding: Rounding): Decimal {
  const negativeResult = a.digits < 0n !== b.digits < 0n;
  const dividend = magnitude(a.digits);
  const divisor = magnitude(b.digits);
  if (dividend === 0n) return { digits: 0n, exponent: 0 };
  const shift = Math.max(0, digits + 1 + length(divisor) - length(dividend));
  const scaled = dividend * 10n ** BigInt(shift);
  const whole = scaled / divisor;
  const drop = length(whole) - digits;
  const unit = 10n ** BigInt(drop);
  const inexact = whole % unit !== 0n || scaled % divisor !== 0n;
  const awayFromZero =
    rounding === 'nearest' ? (whole % unit) * 2n >= unit : inexact && (rounding === 'up') !== negativeResult;
  const kept = whole / unit + (awayFromZero ? 1n : 0n);
  const exponent = a.exponent - b.exponent - shift + drop;
  const carried = length(kept) > digits;
  const result = carried ? { digits: kept / 10n, exponent: exponent + 1 } : { digits: kept, exponent };
  return negativeResult ? negative(result) : result;
}

/** How many decimal digits an integer has, without its sign. */
export const length = (integer: bigint): number => magnitude(integer).toString().length;

const magnitude = (integer: bigint): bigint => (integer < 0n ? -integer : integer);
