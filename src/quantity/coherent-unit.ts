import { compose, type Factor, pureUnit } from './compose-unit.ts';
import { type Dimension, same } from './dimension.ts';
import { type Kind, kinds } from './kinds.ts';
import { knownUnits } from './known-units.ts';
import { parseUnit } from './parse-unit.ts';
import { withArticle } from './place.ts';
import type { Unit } from './unit.ts';

const named: readonly (readonly [name: string, kind: Kind, unit: Unit])[] = Object.entries(kinds).map(
  ([name, kind]) => [name, kind, parseUnit(kind.unit)] as const,
);

const find = (dimension: Dimension) => named.find(([, kind]) => same(kind.of, dimension));

/**
 * What an engineer calls a quantity of this dimension, or its SI base units where there is no name.
 * @example describeDimension([2, 1, -3, -1, 0, 0, 0]) // 'voltage'
 * @example describeDimension([0, 1, -3, 0, 0, 0, 0.5]) // 'kg·√cd/s³'
 */
export const describeDimension = (dimension: Dimension): string => find(dimension)?.[0] ?? inBaseUnits(dimension).text;

/** The kind with its article, for a message: `a voltage`, `a quantity in kg·√cd/s³`. */
export function kindOf(dimension: Dimension): string {
  const name = find(dimension)?.[0];
  return name ? withArticle(name) : `a quantity in ${inBaseUnits(dimension).text}`;
}

/**
 * The unit without a prefix that a quantity of this dimension is usually given in: V, Ω, K/W, else SI base units.
 * Its scale is 1.
 */
export const coherentUnit = (dimension: Dimension): Unit => find(dimension)?.[2] ?? inBaseUnits(dimension);

function inBaseUnits(dimension: Dimension): Unit {
  // Kilogram before metre and second, as in the SI Brochure's tables.
  const factors = [1, 0, 2, 3, 4, 5, 6].map((i): Factor => {
    // Roots leave rounding in the exponents.
    const power = Number(dimension[i]!.toFixed(6));
    return { unit: knownUnits.get(['m', 'kg', 's', 'A', 'K', 'mol', 'cd'][i]!)!, power };
  });
  return factors.every(({ power }) => power === 0) ? pureUnit : compose(factors);
}
