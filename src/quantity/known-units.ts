import { decimalOf, toNumber } from './decimal.ts';
import { kinds } from './kinds.ts';
import type { Unit } from './unit.ts';
import { offsets, prefixTable, type UnitRow, unitTable } from './unit-table.ts';

/** A unit of the table with one of its prefixes. */
export interface PrefixedUnit {
  readonly unit: Unit;
  readonly power: number;
}

/** Every spelling that is read, with its unit: `kohm`, `kΩ`, `min`. */
export const knownUnits: ReadonlyMap<string, Unit> = new Map(
  unitTable.flatMap((row) =>
    spellings(row).flatMap(({ typed, power, text }) => typed.map((name) => [name, sized(row, text, power)] as const)),
  ),
);

/** The same unit with each prefix a value may be printed in, smallest first; found by the printed text of any of them. */
export const prefixFamilies: ReadonlyMap<string, readonly PrefixedUnit[]> = new Map(
  unitTable.filter(([, , , , prefixes]) => prefixes !== '').flatMap(family),
);

const words = new Set([...knownUnits.keys()].filter((name) => !name.includes('·')));

/** Every word that is a unit, prefixes included; `m`, `kohm`, `°C` and `%` among them. */
export const unitNames = (): ReadonlySet<string> => words;

function spellings([text, typed, , , prefixes]: UnitRow) {
  const names = [text, ...typed];
  const prefixed = prefixTable
    .filter((prefix) => prefixes.includes(prefix.text))
    .map((prefix) => ({
      text: prefix.text + text,
      typed: prefix.typed.flatMap((letter) => names.map((name) => letter + name)),
      power: prefix.power as number,
    }));
  return [{ text, typed: names, power: 0 }, ...prefixed];
}

function sized([text, , of, scale]: UnitRow, printed: string, power: number): Unit {
  const one = decimalOf(scale);
  return {
    text: printed,
    dimension: kinds[of].of,
    scale: toNumber({ digits: one.digits, exponent: one.exponent + power }),
    offset: offsets[text] ?? 0,
  };
}

function family(row: UnitRow) {
  const all = spellings(row).map(({ text, power }) => ({ unit: sized(row, text, power), power }));
  // Centimetres are read but not printed: a packet counts in thousands.
  const printed = all.filter(({ power }) => power % 3 === 0).sort((a, b) => a.power - b.power);
  return all.map(({ unit }) => [unit.text, printed] as const);
}
