/** A number is written with the shortest digits that read back the same; nothing is an empty cell. */
export type CsvCell = string | number | null;

/**
 * CSV after RFC 4180: comma, CRLF after every record, a cell in double quotes where it holds a quote, comma, line break
 * or an outer space. Text that a spreadsheet would run as a formula gets an apostrophe in front; a number does not.
 * @throws RangeError for a number that is not finite, or rows of unequal length
 * @see https://www.rfc-editor.org/rfc/rfc4180
 * @see https://owasp.org/www-community/attacks/CSV_Injection
 * @example toCsv([['part', 'ohm'], ['=R1', -5]]) // "part,ohm\r\n'=R1,-5\r\n"
 */
export function toCsv(rows: readonly (readonly CsvCell[])[]): string {
  const width = rows[0]?.length ?? 0;
  return rows
    .map((row, index) => {
      if (row.length !== width)
        throw new RangeError(`Row ${index + 1} has ${row.length} cells, the first has ${width}.`);
      return `${row.map(cell).join(',')}\r\n`;
    })
    .join('');
}

function cell(value: CsvCell): string {
  if (value === null) return '';
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`${value} cannot stand in a table.`);
    return String(value);
  }
  const safe = guarded(value);
  return /[",\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

// The full-width signs are read as operators by spreadsheets set to East Asian languages.
const startsFormula = /^[=+\-@\t\r\n＝＋－＠]/;
const plainNumber = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

const guarded = (text: string): string => (startsFormula.test(text) && !plainNumber.test(text) ? `'${text}` : text);
