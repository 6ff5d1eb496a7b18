import type { PublishedCheck } from '../../published/check.ts';
import { type Judged, judged, type Tools } from '../../published/judge.ts';
import { isPure } from '../../quantity/dimension.ts';
import { digitsText, exactIn, formatTyped, formatValue } from '../../quantity/figure.ts';
import { differenceUnit, figureText } from '../figures.ts';

/** One published figure beside ours, as printed on the page and in the table of the documents. */
export interface PublishedRow {
  /** What is given here and not in the row above: symbol and value. */
  readonly given: readonly (readonly [name: string, value: string])[];
  readonly what: string;
  readonly expected: string;
  readonly got: string;
  readonly unit: string;
  readonly difference: string;
  /** `±20 µA`: what is still the same figure. */
  readonly allowed: string;
  readonly inside: boolean;
}

/** A check worked through by the engine, row by row. */
export function publishedRows(check: PublishedCheck, tools: Tools): PublishedRow[] {
  const rows = judged(check, tools);
  return rows.map((row, i) => printed(row, rows[i - 1]?.given ?? {}));
}

function printed(
  { what, given, unit, expected, least, most, got, inside }: Judged,
  before: Judged['given'],
): PublishedRow {
  const room = Math.max(most - expected, expected - least);
  const off = got - expected;
  const same = Math.abs(off) <= 1e-13 * Math.abs(expected);
  const asPrinted = digitsText(exactIn(expected, unit));
  const digits = digitsBeyond(room, expected - unit.offset);
  const size = (si: number): string => {
    const figure = isPure(unit.dimension) ? formatTyped : formatValue;
    return figureText(figure(si, differenceUnit(unit), { digits: 2 }));
  };
  return {
    given: Object.entries(given).filter(([name, text]) => before[name] !== text),
    what,
    expected: asPrinted,
    got: same ? asPrinted : formatTyped(got, unit, { digits }).number,
    unit: unit.text,
    difference: same ? '0' : size(off),
    allowed: room > 0 ? `±${size(room)}` : 'none',
    inside,
  };
}

/** Digits that show a figure to a tenth of what is allowed: 4 at least, 12 at most. */
function digitsBeyond(allowed: number, value: number): number {
  if (value === 0) return 4;
  if (allowed === 0) return 12;
  return Math.min(12, Math.max(4, Math.ceil(Math.log10(Math.abs(value) / allowed)) + 2));
}
