import type { Findings } from '../analysis/findings.ts';
import type { Fraction } from '../analysis/statistics.ts';
import { fixed, percent } from './figures.ts';

/**
 * A margin in per cent with one decimal, rounded toward failure, so that −0.01 % never reads as 0.
 * @example percentText(0.0558) // '5.5 %'
 */
export const percentText = (ratio: number): string => `${percent(ratio)}\u00a0%`;

/**
 * How many boards, with their 95 % interval: `≤ 30 ppm` where none was hit, `41–171 ppm`, `11.8–12.3 %`. Never zero.
 * @example failText({ estimate: 0, low: 0, high: 2.9957e-5 }) // '≤ 30 ppm'
 */
export function failText({ estimate, low, high }: Fraction): string {
  const [size, unit] = high < 0.01 ? ([1e6, 'ppm'] as const) : ([100, '%'] as const);
  const seldom = low > 0 && low * 1e6 < 1;
  const decimals = unit === '%' ? 1 : seldom ? 2 : 0;
  const [from, to] = [fixed(low * size, decimals, 'down'), fixed(high * size, decimals, 'up')];
  if (estimate === 0) return `≤\u00a0${to}\u00a0${unit}`;
  if (estimate === 1) return `≥\u00a0${fixed(low * 100, decimalsNear(low), 'down')}\u00a0%`;
  return `${from}–${to}\u00a0${unit}`;
}

/**
 * The fraction of boards that hold everything, with as many nines as the trials can show.
 * @example yieldText({ yield: { estimate: 1, low: 0.99997, high: 1 } }) // '99.997 % or more'
 */
export function yieldText({ yield: fraction }: Pick<Findings, 'yield'>): string {
  if (!fraction) return 'no yield: a check was not assessed';
  const { estimate, low, high } = fraction;
  if (estimate === 0) return `${fixed(high * 100, 3, 'up')}\u00a0% or less`;
  const decimals = decimalsNear(estimate === 1 ? low : high);
  const from = fixed(low * 100, decimals, 'down');
  return estimate === 1 ? `${from}\u00a0% or more` : `${from} to ${fixed(high * 100, decimals, 'up')}\u00a0%`;
}

/** Decimals of a percentage that show how far it is from 100; one at least, four at most. */
function decimalsNear(share: number): number {
  const rest = Number(((1 - share) * 100).toPrecision(9));
  return rest > 0 ? Math.min(4, Math.max(1, Math.ceil(-Math.log10(rest)))) : 4;
}
