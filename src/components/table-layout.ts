import type { Cell, Column, Row, RowGroup, Table } from '../packet/block.ts';
import type { Strip } from '../packet/strip.ts';
import { plainText } from '../site/screen-pages.ts';
import { fractionDigits } from './decimal.ts';

/** What holds for a whole column, and is therefore found before its first cell is set. */
export interface ColumnLayout {
  readonly align: Column['align'];
  readonly sans: boolean;
  /** Digits behind the point that every number of the column is padded to. */
  readonly digits: number;
  /** Characters of the longest unit behind a number in the same cell. */
  readonly unitWidth: number;
  /** Head in plain words, shown before a number on narrow screens. */
  readonly head: string;
  readonly width?: number;
}

export function columnLayouts(table: Table): ColumnLayout[] {
  const rows = table.groups.flatMap((group) => group.rows);
  return table.columns.map((column, index) => {
    const numbers = rows.map((row) => row.cells[index]).filter((cell) => cell !== undefined && isNumber(cell));
    return {
      align: column.align,
      sans: column.face === 'sans',
      digits: Math.max(0, ...numbers.map(({ number }) => fractionDigits(number))),
      unitWidth: Math.max(0, ...numbers.map(({ unit }) => unit?.length ?? 0)),
      head: plainText(column.head),
      ...(column.width === undefined ? {} : { width: column.width }),
    };
  });
}

/** From this many rows on, hairlines stand under every fifth row only. */
const longTable = 20;

/** Groups whose rows know whether a hairline follows. */
export function ruledGroups(groups: readonly RowGroup[]): { group: RowGroup; ruled: boolean[] }[] {
  const long = groups.reduce((sum, { rows }) => sum + rows.length, 0) >= longTable;
  let before = 0;
  return groups.map((group) => {
    const ruled = group.rows.map((_, index) => !long || (before + index + 1) % 5 === 0);
    before += group.rows.length;
    return { group, ruled };
  });
}

export type NumberCell = Extract<Cell, { readonly number: string }>;
export type StripCell = { readonly strip: Strip };

/**
 * The unit that belongs to the number in column `at`, where that is the last one before a column of units: a narrow screen
 * shows it with the number, for there the two could part.
 */
export function unitBehind(row: Row, columns: readonly ColumnLayout[], at: number): string | undefined {
  const cell = row.cells[at];
  if (columns[at]?.align !== 'decimal' || !cell || !isNumber(cell) || isEmpty(cell)) return undefined;
  const unit = columns.findIndex(({ align }, index) => index > at && align === 'unit');
  const between = row.cells.slice(at + 1, unit);
  const [text] = (unit === -1 ? [] : (row.cells[unit] ?? [])) as readonly unknown[];
  const alone = columns.slice(at + 1, unit).every(({ align }) => align === 'decimal') && between.every(isEmpty);
  return alone && typeof text === 'string' && text !== '–' ? text : undefined;
}

/** Nothing, or the dash that says so: left out where a row is a small block without columns to keep. */
export function isEmpty(cell: Cell): boolean {
  if (isStrip(cell)) return false;
  if (isNumber(cell)) return cell.number === '–';
  return cell.length === 0 || (cell.length === 1 && cell[0] === '–');
}

export function isNumber(cell: Cell): cell is NumberCell {
  return 'number' in cell;
}

export function isStrip(cell: Cell): cell is StripCell {
  return 'strip' in cell;
}
