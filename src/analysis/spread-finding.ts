import type { Unit } from '../quantity/unit.ts';
import type { Corner, SpreadFinding } from './findings.ts';
import type { Spread } from './simulate/spread.ts';
import { differenceInUnit } from './units.ts';

/** A simulated spread in a printed unit; null where no part moves the result. */
export function spreadFinding(
  spread: Spread,
  at: Corner,
  unit: Unit,
  to: (si: number, unit: Unit) => number,
): SpreadFinding | null {
  if (!(spread.sd > 0)) return null;
  const [a, b, c, d, e] = spread.quantiles.map((x) => to(x, unit));
  const within = spread.within.map(([least, greatest]) => [to(least, unit), to(greatest, unit)] as const);
  const { from, to: end, counts } = spread.histogram;
  return {
    at,
    mean: to(spread.mean, unit),
    sd: differenceInUnit(spread.sd, unit),
    quantiles: { '0.00135': a!, '0.025': b!, '0.5': c!, '0.975': d!, '0.99865': e! },
    quantile_confidence: {
      '0.00135': within[0]!,
      '0.025': within[1]!,
      '0.5': within[2]!,
      '0.975': within[3]!,
      '0.99865': within[4]!,
    },
    histogram: { from: to(from, unit), to: to(end, unit), counts },
  };
}
