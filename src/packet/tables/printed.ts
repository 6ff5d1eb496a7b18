import type { Cell, Table } from '../block.ts';
import type { CsvCell } from '../csv.ts';
import type { Packet } from '../packet.ts';
import type { Inline, Text } from '../text.ts';

/**
 * Tables of the packet whose content another file holds at full precision. Those of the calculations are inputs.csv, margins.csv
 * and validity.csv, circuit by circuit.
 */
const elsewhere = new Set([
  'thinnest-margins',
  'margin-table',
  'corners',
  'parts-list',
  'three-methods',
  'contributions',
  'requirements',
  'production-limits',
  'bench-readings',
  'bench-record',
]);

/** All other tables of a packet by their id, as printed; pictures in rows are left out. */
export function printedTables({ chapters }: Packet): ReadonlyMap<string, CsvCell[][]> {
  const tables = chapters
    .filter(({ slug }) => slug !== 'calculations')
    .flatMap(({ blocks, sections }) => [...blocks, ...sections.flatMap((section) => section.blocks)])
    .filter((block) => block.kind === 'table' && !elsewhere.has(block.id) && !block.id.startsWith('test-points-'));
  return new Map((tables as Table[]).map((table) => [table.id, rowsOf(table)]));
}

function rowsOf({ columns, groups }: Table): CsvCell[][] {
  const drawn = columns.map(({ align }) => align !== 'strip');
  const grouped = groups.some(({ title }) => title !== undefined);
  const kept = <T>(cells: readonly T[]): T[] => cells.filter((_, i) => drawn[i]);
  return [
    [...(grouped ? ['group'] : []), ...kept(columns).map(({ head }) => plain(head))],
    ...groups.flatMap(({ title, rows }) =>
      rows.map(({ cells }): CsvCell[] => [
        ...(grouped ? [title ?? null] : []),
        ...kept(columns.map((_, i) => cells[i] ?? [])).map(cellOf),
      ]),
    ),
  ];
}

function cellOf(cell: Cell): CsvCell {
  if ('strip' in cell) return null;
  if (!('number' in cell)) return plain(cell) || null;
  const number = spaceless(cell.number);
  return /^-?\d+(\.\d+)?$/.test(number) ? Number(number) : number;
}

/** Digits as a spreadsheet reads them: no thin spaces, the minus of a keyboard. */
const spaceless = (number: string): string => number.replaceAll(/[\u2009\u00a0]/g, '').replaceAll('\u2212', '-');

const plain = (text: Text): string => text.map(words).join('').replaceAll('\u00a0', ' ').trim().replace(/^–$/, '');

function words(part: Inline): string {
  if (typeof part === 'string') return part;
  switch (part.kind) {
    case 'math':
      return symbol(part.tex);
    case 'page':
      return '';
    case 'verdict':
      return [part.figure, part.verdict, part.deviation].filter((one) => one !== undefined).join(' ');
    default:
      return part.text;
  }
}

/** A symbol or equation as one would type it: `R_{\mathrm{on}}` → `R_on`. */
const symbol = (tex: string): string =>
  tex
    .replaceAll(/\\(?:mathrm|text|operatorname)\{([^{}]*)\}/g, '$1')
    .replaceAll(/\\[,;:! ]/g, ' ')
    .replaceAll(/\\(le|ge)\b/g, (_, sign: string) => (sign === 'le' ? '<=' : '>='))
    .replaceAll(/\\([a-zA-Z]+) ?/g, '$1')
    .replaceAll(/[{}]/g, '');
