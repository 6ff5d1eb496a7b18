import { type Dimension, isPure, pureNumber, same } from '../../quantity/dimension.ts';
import { withArticle } from '../../quantity/place.ts';
import { coherentUnit, describeDimension } from '../../quantity/units.ts';
import { DimensionError } from '../dimension-error.ts';
import type { Operand } from '../operation.ts';

/** What operations demand of their arguments' dimensions. All throw a DimensionError. */

/** How an operand is named in a message: its text and what it is. */
export function described(operand: Operand): string {
  return `\`${operand.text}\`, ${whatItIs(operand)}`;
}

/** `a voltage`, `a quantity in kg/s`, `a truth`. */
export function whatItIs({ dimension }: Operand): string {
  if (dimension === 'truth') return 'a truth (the outcome of a comparison)';
  const name = describeDimension(dimension);
  return name === coherentUnit(dimension).text ? `a quantity in ${name}` : withArticle(name);
}

/** The dimension of argument `i`, which must be a quantity and not a truth. */
export function quantityAt(args: readonly Operand[], i: number): Dimension {
  const operand = args[i]!;
  if (operand.dimension !== 'truth') return operand.dimension;
  throw new DimensionError({
    argument: i,
    found: described(operand),
    expected: 'a quantity',
    hint: 'A comparison gives a truth; if(condition, a, b) makes a quantity of it.',
  });
}

/** The one dimension that the arguments share: all of them, or those at `indices`. */
export function alike(args: readonly Operand[], indices: readonly number[] = [...args.keys()]): Dimension {
  const [from, ...others] = indices;
  const first = quantityAt(args, from!);
  for (const i of others) {
    if (same(first, quantityAt(args, i))) continue;
    throw new DimensionError({
      argument: i,
      found: described(args[i]!),
      expected: `${whatItIs(args[from!]!)}, as \`${args[from!]!.text}\` is`,
    });
  }
  return first;
}

export function pureAt(args: readonly Operand[], i: number, name: string): Dimension {
  if (isPure(quantityAt(args, i))) return pureNumber;
  throw new DimensionError({
    argument: i,
    found: described(args[i]!),
    expected: `a pure number, which is all that ${name} takes`,
    hint: 'Divide it by a quantity of its own kind first.',
  });
}

export function truthAt(args: readonly Operand[], i: number): 'truth' {
  if (args[i]!.dimension === 'truth') return 'truth';
  throw new DimensionError({ argument: i, found: described(args[i]!), expected: 'a comparison such as a < b' });
}
