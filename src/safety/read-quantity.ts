import { parseExpression } from '../expression/parse.ts';
import { dimensionOf } from '../expression/readings/dimension.ts';
import type { Tree } from '../expression/tree.ts';
import { type Dimension, pureNumber, same } from '../quantity/dimension.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import { TextError } from '../quantity/text-problem.ts';
import type { Unit } from '../quantity/unit.ts';
import { describeDimension, parseUnit } from '../quantity/units.ts';
import type { Report } from '../spec/report.ts';
import type { Path } from '../spec/yaml-file.ts';
import { withFacts } from './flag-trees.ts';
import type { HazardQuantity } from './safety-data.ts';
import type { QuantityEntry } from './safety-schema.ts';

interface Tables {
  isFlag(name: string): boolean;
  readonly quantities: ReadonlyMap<string, { readonly entry: QuantityEntry }>;
}

/** One row of the table of hazard quantities; undefined where its problems have been noted. */
export function readQuantity(
  report: Report,
  path: Path,
  symbol: string,
  entry: QuantityEntry,
  tables: Tables,
): HazardQuantity | undefined {
  const unit = report.attempt([...path, 'unit'], () => parseUnit(entry.unit));
  if (!unit) return undefined;
  const lookup = dimensions(tables);
  const tree = (key: 'equals' | 'zero when' | 'infinite when', wanted: Dimension | 'truth'): Tree | undefined => {
    const text = entry[key];
    return text === undefined ? undefined : report.attempt([...path, key], () => treeOf(text, tables, lookup, wanted));
  };
  const equals = tree('equals', unit.dimension);
  const zeroWhen = tree('zero when', 'truth');
  const infiniteWhen = tree('infinite when', 'truth');
  const standIn = entry.default;
  const si = standIn ? report.attempt([...path, 'default', 'is'], () => defaultOf(standIn.is, unit)) : undefined;
  const { says, danger, several, assumed, unknown } = entry;
  return {
    symbol,
    says,
    danger,
    unknown,
    unit,
    tag: entry['read from'] ?? symbol,
    digits: entry.digits ?? 3,
    endless: entry.endless ?? 'a value without limit',
    ...(several ? { several } : {}),
    ...(assumed ? { assumed } : {}),
    ...(entry.condition ? { condition: entry.condition } : {}),
    ...(equals ? { equals } : {}),
    ...(zeroWhen ? { zeroWhen } : {}),
    ...(infiniteWhen ? { infiniteWhen } : {}),
    ...(standIn && si !== undefined ? { default: { si, why: standIn.why } } : {}),
  };
}

/** Dimension of a name in the tables: facts are the numbers 0 and 1. */
export function dimensions({ isFlag, quantities }: Tables): (name: string) => Dimension | undefined {
  return (name) => {
    const unit = quantities.get(name)?.entry.unit;
    return unit === undefined ? (isFlag(name) ? pureNumber : undefined) : parseUnit(unit).dimension;
  };
}

/** The expression with its facts as truths; throws a TextError where it is not of the dimension wanted. */
export function treeOf(
  text: string,
  { isFlag }: Pick<Tables, 'isFlag'>,
  lookup: (name: string) => Dimension | undefined,
  wanted: Dimension | 'truth',
): Tree {
  const tree = withFacts(parseExpression(text), isFlag);
  const found = dimensionOf(tree, lookup);
  if (found === wanted || (found !== 'truth' && wanted !== 'truth' && same(found, wanted))) return tree;
  const named = (of: Dimension | 'truth') =>
    of === 'truth' ? 'a comparison or a fact' : `a quantity of ${describeDimension(of)}`;
  throw new TextError({
    code: 'wrong-unit',
    ...tree.at,
    found: `\`${text}\`, ${named(found)}`,
    expected: named(wanted),
  });
}

function defaultOf(text: string, unit: Unit): number {
  const quantity = parseQuantity(text);
  if (quantity.form === 'number' && same(quantity.unit.dimension, unit.dimension)) return quantity.typ;
  throw new TextError({
    code: 'wrong-unit',
    start: 0,
    end: text.length,
    found: `\`${text}\``,
    expected: `a number with a unit of ${describeDimension(unit.dimension)}`,
  });
}
