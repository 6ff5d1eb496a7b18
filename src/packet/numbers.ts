import type { Findings } from '../analysis/findings.ts';
import type { Fraction } from '../analysis/statistics.ts';
import { type FigureOptions, formatTyped } from '../quantity/figure.ts';
import { parseUnit } from '../quantity/units.ts';

const percent = parseUnit('%');
const ppm = parseUnit('ppm');

/**
 * A margin in percent with one decimal, rounded toward failure, so that −0.01 % never reads as 0.
 * @example percentText(0.0558) // '5.5 %'
 */
export function percentText(ratio: number): string {
  const tenths = Math.floor(Number((ratio * 1000).toPrecision(12)));
  return `${minus((tenths / 10).toFixed(1))} %`;
}

/**
 * Boards that fail, with their 95 % interval: a fraction of none is never printed as zero.
 * @example failText({ estimate: 0, low: 0, high: 2.9957e-5 }) // '≤ 30 ppm'
 */
export function failText({ estimate, low, high }: Fraction): string {
  if (high < 1e-3) return low === 0 ? `≤ ${inPpm(high, 'up')} ppm` : `${inPpm(low, 'down')}–${inPpm(high, 'up')} ppm`;
  if (low === 0) return `≤ ${inPercent(high, 'up')} %`;
  return estimate === 1 ? `≥ ${inPercent(low, 'down')} %` : `${inPercent(low, 'down')}–${inPercent(high, 'up')} %`;
}

/** @example yieldText({ yield: { estimate: 1, low: 0.99997, high: 1 } }) // '99.997 % or more' */
export function yieldText({ yield: fraction }: Pick<Findings, 'yield'>): string {
  if (!fraction) return 'no yield: a check was not assessed';
  const { low, high } = fraction;
  if (high === 1) return `${trimmed(low, 'down')} % or more`;
  if (low === 0) return `${trimmed(high, 'up')} % or less`;
  return `${trimmed(low, 'down')} to ${trimmed(high, 'up')} %`;
}

const inPpm = (ratio: number, round: NonNullable<FigureOptions['round']>): string =>
  formatTyped(ratio, ppm, { digits: 2, round }).number;
const inPercent = (ratio: number, round: NonNullable<FigureOptions['round']>): string =>
  formatTyped(ratio, percent, { digits: 2, round }).number;

/** Enough nines to tell the yields of two boards apart. */
function trimmed(ratio: number, round: 'up' | 'down'): string {
  const thousandths = Number((ratio * 1e5).toPrecision(12));
  const whole = round === 'up' ? Math.ceil(thousandths) : Math.floor(thousandths);
  return (whole / 1000).toFixed(3);
}

const minus = (text: string): string => text.replace('-', '−');
