/** A cell with its place in the file. */
export interface CsvField {
  readonly text: string;
  /** Offsets of what stands in the file, quotes included. */
  readonly start: number;
  readonly end: number;
}
export type CsvRecord = readonly CsvField[];

/** What keeps a text from being CSV, with its offsets. */
export interface CsvFault {
  readonly start: number;
  readonly end: number;
  readonly found: string;
  readonly expected: string;
}

/**
 * The records of a text after RFC 4180: commas, cells in double quotes where they hold a comma, quote or line break, lines
 * ended by LF or CRLF. A mark of byte order is passed over; empty lines are left out; outer spaces do not count.
 * @see https://www.rfc-editor.org/rfc/rfc4180
 * @example csvRecords('a,b\n1,"x, y"').records[1][1].text // 'x, y'
 */
export function csvRecords(text: string): { records: CsvRecord[]; faults: CsvFault[] } {
  const records: CsvField[][] = [];
  const faults: CsvFault[] = [];
  let record: CsvField[] = [];
  let at = text.startsWith('\ufeff') ? 1 : 0;
  while (at <= text.length) {
    const field = text.slice(at).match(/^[ \t]*"/) ? quoted(text, at, faults) : bare(text, at, faults);
    record.push(field);
    at = skipSpaces(text, field.end);
    if (text[at] === ',') {
      at++;
      continue;
    }
    if (record.length > 1 || record[0]!.text !== '') records.push(record);
    record = [];
    if (at >= text.length) break;
    at += text.startsWith('\r\n', at) ? 2 : 1;
    if (at === text.length) break;
  }
  return { records, faults };
}

const skipSpaces = (text: string, from: number): number =>
  from + /^[ \t]*/.exec(text.slice(from, from + 200))![0].length;

function bare(text: string, at: number, faults: CsvFault[]): CsvField {
  const rest = text.slice(at).search(/[,\r\n]/);
  const stop = rest < 0 ? text.length : at + rest;
  const raw = text.slice(at, stop);
  const start = at + raw.length - raw.trimStart().length;
  const inner = raw.trim();
  const quote = inner.indexOf('"');
  if (quote >= 0)
    faults.push({
      start: start + quote,
      end: start + quote + 1,
      found: 'a quote inside a cell that is not quoted',
      expected: 'the whole cell in double quotes, and each quote in it twice',
    });
  return { text: inner, start: Math.min(start, stop), end: stop };
}

function quoted(text: string, from: number, faults: CsvFault[]): CsvField {
  const start = skipSpaces(text, from);
  const close = /^"((?:[^"]|"")*)"/.exec(text.slice(start));
  if (!close) {
    faults.push({ start, end: start + 1, found: 'a quote that is never closed', expected: 'a closing double quote' });
    return { text: text.slice(start + 1), start, end: text.length };
  }
  const end = start + close[0].length;
  const behind = skipSpaces(text, end);
  if (behind < text.length && !/[,\r\n]/.test(text[behind]!)) {
    faults.push({
      start: end,
      end: end + 1,
      found: 'text behind a closing quote',
      expected: 'a comma or the end of the line, and a quote inside a cell twice',
    });
    const rest = text.slice(behind).search(/[,\r\n]/);
    return { text: close[1]!, start, end: rest < 0 ? text.length : behind + rest };
  }
  return { text: close[1]!.replaceAll('""', '"').trim(), start, end };
}
