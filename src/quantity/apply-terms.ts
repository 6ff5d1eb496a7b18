import { type Decimal, decimalOf, minus, one, plus, times, toNumber } from './decimal.ts';
import type { Band, Quantity } from './quantity.ts';
import type { SortedChange, Terms } from './read-terms.ts';

/** A value's limits in SI base units. */
export interface Limits {
  readonly min: number;
  readonly max: number;
}

/**
 * The limits that a tolerance sets, each rounded once. A share scales the magnitude, so a negative value grows
 * downward: −5 V +10 % −0 % lies between −5.5 V and −5 V.
 */
export function limitsOf(typ: number, { up, down, of }: Pick<SortedChange, 'up' | 'down' | 'of'>): Limits {
  const value = decimalOf(typ);
  const share = of === 'share';
  const raised = toNumber(share ? times(value, plus(one, up)) : plus(value, up));
  const lowered = toNumber(share ? times(value, minus(one, down)) : minus(value, down));
  return { min: Math.min(raised, lowered), max: Math.max(raised, lowered) };
}

/** Drift and ageing as bands, with the units that all changes were typed in. */
export function changesOf({
  tolerance,
  drift,
  ageing,
}: Terms): Pick<Quantity, 'drift' | 'driftAbsolute' | 'ageing' | 'typedIn'> {
  const typedIn = {
    ...(tolerance?.unit && { tolerance: tolerance.unit }),
    ...(drift?.unit && { drift: drift.unit }),
    ...(ageing?.unit && { ageing: ageing.unit }),
  };
  return {
    ...(drift && (drift.of === 'share' ? { drift: band(drift) } : { driftAbsolute: band(drift) })),
    ...(ageing && { ageing: band(ageing) }),
    ...(Object.keys(typedIn).length > 0 && { typedIn }),
  };
}

// 0 − x, not −x: a side of 0 shall be 0, not −0.
const band = ({ up, down }: { up: Decimal; down: Decimal }): Band => ({ min: 0 - toNumber(down), max: toNumber(up) });
