import { same } from '../../quantity/dimension.ts';
import { parseQuantity } from '../../quantity/parse-quantity.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { TextError } from '../../quantity/text-problem.ts';
import type { Unit } from '../../quantity/unit.ts';
import { describeDimension, parseUnit } from '../../quantity/units.ts';
import type { Board, Circuit, Result } from '../board.ts';
import { placesIn } from '../place-in-text.ts';
import type { Problem } from '../problem.ts';
import { meant } from '../schema-problems.ts';
import type { BenchReading } from './bench-reading.ts';
import { type CsvField, type CsvRecord, csvRecords } from './csv-cells.ts';

/** Columns of `bench.csv`: the first five must be there, in any order. */
export const benchColumns = {
  point: 'test point such as `bus_sense.tap`, or a result such as `stage.T_j`',
  value: 'what was read, a number',
  unit: 'its unit',
  uncertainty: 'half-width at 95 % (k = 2), in the unit of the value or as `0.5 %` of it',
  date: 'day of the reading',
  at: 'what was applied, such as `I_ph = 40 A; T_amb = 23 degC`',
  sample: 'serial number of the board',
  instrument: 'with what it was read',
  by: 'role of who read it',
  remark: 'anything that a reader must know',
} as const;
type ColumnName = keyof typeof benchColumns;
const needed: readonly ColumnName[] = ['point', 'value', 'unit', 'uncertainty', 'date'];
const largest = 2_000_000;

type Report = (field: CsvField, key: ColumnName | '', what: Parameters<ReturnType<typeof placesIn>>[3]) => void;
type Cells = Partial<Record<ColumnName, CsvField>>;

/**
 * The readings of a `bench.csv`, or every problem that keeps it from being read, each with line and column. Pure: takes text,
 * reads no disk.
 */
export function readBench(
  text: string,
  file: string,
  board: Board,
): { readings: readonly BenchReading[]; problems: readonly Problem[] } {
  const place = placesIn(text, file);
  const problems: Problem[] = [];
  if (text.length > largest) {
    const what = { code: 'file-too-large', found: `${(text.length / 1e6).toFixed(1)} MB`, expected: 'at most 2 MB' };
    return { readings: [], problems: [place(0, 1, '', what)] };
  }
  const { records, faults } = csvRecords(text);
  for (const { start, end, ...what } of faults) problems.push(place(start, end, '', { code: 'csv-syntax', ...what }));
  if (problems.length) return { readings: [], problems };
  const report: Report = ({ start, end }, key, what) =>
    problems.push(place(start, Math.max(end, start + 1), key, what));
  const head = readHead(records[0] ?? [{ text: '', start: 0, end: 0 }], report);
  if (problems.length) return { readings: [], problems };
  const readings = records.slice(1).flatMap((record, i): BenchReading[] => {
    if (record.length > head.length) {
      report(record[head.length]!, '', {
        code: 'csv-columns',
        found: `${record.length} cells`,
        expected: `${head.length}, as in the first line`,
        hint: 'Put a cell that holds a comma in double quotes.',
      });
      return [];
    }
    const reading = readRecord(record, head, board, report);
    const { line } = place(record[0]!.start, record[0]!.start + 1, '', { code: '', found: '', expected: '' });
    return reading ? [{ id: `B-${i + 1}`, line, ...reading }] : [];
  });
  return problems.length ? { readings: [], problems } : { readings, problems };
}

function readHead(record: CsvRecord, report: Report): ColumnName[] {
  const known = Object.keys(benchColumns);
  const names = record.map((field) => {
    if (!known.includes(field.text))
      report(field, '', {
        code: 'unknown-column',
        found: field.text ? `the column \`${field.text}\`` : 'a column without a name',
        expected: `one of ${known.map((name) => `\`${name}\``).join(', ')}`,
        ...meant(field.text, known),
      });
    return field.text as ColumnName;
  });
  for (const [i, name] of names.entries())
    if (names.indexOf(name) < i)
      report(record[i]!, '', {
        code: 'column-twice',
        found: `the column \`${name}\` a second time`,
        expected: 'it once',
      });
  for (const name of needed.filter((one) => !names.includes(one)))
    report(record[0]!, '', {
      code: 'missing-column',
      found: `no column \`${name}\``,
      expected: `it in the first line: ${benchColumns[name]}`,
    });
  return names;
}

function readRecord(
  record: CsvRecord,
  head: readonly ColumnName[],
  board: Board,
  report: Report,
): Omit<BenchReading, 'id' | 'line'> | undefined {
  const cells: Cells = Object.fromEntries(head.map((name, i) => [name, record[i]]));
  const last = record.at(-1)!;
  const missing = needed.filter((name) => !cells[name]?.text);
  for (const name of missing)
    report(cells[name] ?? last, name, { code: 'missing-value', found: 'nothing', expected: benchColumns[name] });
  const point = cells.point?.text ? readPoint(cells.point, board, report) : undefined;
  if (missing.length || !point) return undefined;
  const unit = readUnit(cells.unit!, point.result, report);
  const value = readNumber(cells.value!, 'value', report);
  const date = readDate(cells.date!, report);
  const when = cells.at?.text ? readWhen(cells.at, board, point.circuit, report) : new Map<string, Quantity>();
  if (!unit || value === undefined || !date || !when) return undefined;
  const uncertainty = readUncertainty(cells.uncertainty!, value * unit.scale, unit, report);
  if (uncertainty === undefined) return undefined;
  const words = (['sample', 'instrument', 'by', 'remark'] as const).flatMap((name) =>
    cells[name]?.text ? [[name, cells[name].text.replaceAll(/\s+/g, ' ')] as const] : [],
  );
  return {
    ...(point.id === point.result.id ? {} : { point: point.id }),
    reads: point.result.id,
    when,
    value: value * unit.scale + unit.offset,
    uncertainty,
    unit,
    date,
    ...Object.fromEntries(words),
  };
}

interface Point {
  readonly id: string;
  readonly circuit: Circuit;
  readonly result: Result;
}

function readPoint(field: CsvField, { circuits }: Board, report: Report): Point | undefined {
  const points = circuits.flatMap((circuit) => [
    ...circuit.testPoints.map(
      ({ name, reads }): Point => ({
        id: `${circuit.id}.${name}`,
        circuit,
        result: circuit.results.find(({ id }) => id === reads)!,
      }),
    ),
    ...circuit.results.map((result): Point => ({ id: result.id, circuit, result })),
  ]);
  const found = points.find(({ id }) => id === field.text);
  if (!found)
    report(field, 'point', {
      code: 'unknown-point',
      found: `\`${field.text}\``,
      expected: benchColumns.point,
      ...meant(
        field.text,
        points.map(({ id }) => id),
      ),
    });
  return found;
}

function readUnit(field: CsvField, result: Result, report: Report): Unit | undefined {
  const unit = attempt(field, 'unit', report, () => parseUnit(field.text));
  if (!unit || same(unit.dimension, result.unit.dimension)) return unit;
  report(field, 'unit', {
    code: 'wrong-unit',
    found: `\`${field.text}\`, a unit of ${describeDimension(unit.dimension)}`,
    expected: `a unit of ${describeDimension(result.unit.dimension)}, which \`${result.id}\` is`,
  });
  return undefined;
}

const plainNumber = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?$/;

function readNumber(field: CsvField, key: ColumnName, report: Report): number | undefined {
  const text = field.text.replace(/^\u2212/, '-');
  const value = Number(text);
  if (plainNumber.test(text) && Number.isFinite(value)) return value;
  report(field, key, {
    code: 'not-a-number',
    found: `\`${field.text}\``,
    expected: 'a number with a point, such as `2.253`',
    ...(/\d,\d/.test(field.text) ? { hint: 'Write a decimal point and no comma.' } : {}),
  });
  return undefined;
}

function readUncertainty(field: CsvField, size: number, unit: Unit, report: Report): number | undefined {
  const share = /^(.*?)\s*%$/.exec(field.text);
  const number = readNumber(share ? { ...field, text: share[1]! } : field, 'uncertainty', report);
  if (number === undefined) return undefined;
  if (number < 0 || (share && unit.offset !== 0)) {
    report(field, 'uncertainty', {
      code: 'not-an-uncertainty',
      found: `\`${field.text}\``,
      expected: number < 0 ? 'a number that is not negative' : 'kelvin: a share of a temperature says nothing',
    });
    return undefined;
  }
  return share ? (number / 100) * Math.abs(size) : number * unit.scale;
}

function readDate(field: CsvField, report: Report): string | undefined {
  const { text } = field;
  const day = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : undefined;
  if (day && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text)) return text;
  report(field, 'date', {
    code: 'not-a-date',
    found: `\`${text}\``,
    expected: 'a date as year-month-day, such as `2026-03-18`',
  });
  return undefined;
}

/** `I_ph = 40 A; T_amb = 23 degC` */
function readWhen(
  field: CsvField,
  board: Board,
  circuit: Circuit,
  report: Report,
): ReadonlyMap<string, Quantity> | undefined {
  const inputs = new Map([
    ...board.circuits.flatMap((one) => one.inputs).map((input) => [input.id, input] as const),
    ...[...board.conditions, ...circuit.inputs].map((input) => [input.symbol, input] as const),
  ]);
  const when = new Map<string, Quantity>();
  let good = true;
  const refuse = (what: Parameters<Report>[2]): void => {
    good = false;
    report(field, 'at', what);
  };
  for (const part of field.text.split(';').filter((one) => one.trim())) {
    const [, symbol, text] = /^\s*([^=\s]+)\s*=\s*(.+?)\s*$/.exec(part) ?? [];
    const input = symbol === undefined ? undefined : inputs.get(symbol);
    if (symbol === undefined || text === undefined)
      refuse({ code: 'not-a-condition', found: `\`${part.trim()}\``, expected: `${benchColumns.at}` });
    else if (!input)
      refuse({
        code: 'unknown-name',
        found: `\`${symbol}\``,
        expected: `a condition of the board, what \`${circuit.id}\` is given, or \`circuit.symbol\` of another circuit`,
        ...meant(symbol, inputs.keys()),
      });
    else {
      const quantity = attempt(field, 'at', report, () => parseQuantity(text));
      if (!quantity) good = false;
      else if (same(quantity.unit.dimension, input.unit.dimension)) when.set(symbol, quantity);
      else
        refuse({
          code: 'wrong-unit',
          found: `\`${text}\`, a quantity of ${describeDimension(quantity.unit.dimension)}`,
          expected: `a quantity of ${describeDimension(input.unit.dimension)}`,
        });
    }
  }
  return good ? when : undefined;
}

function attempt<T>(field: CsvField, key: ColumnName, report: Report, read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof TextError)) throw error;
    const { code, found, expected, hint } = error.problem;
    report(field, key, { code, found, expected, ...(hint ? { hint } : {}) });
    return undefined;
  }
}
