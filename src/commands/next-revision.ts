/** What a copied spec is to say about itself. */
export interface Renewal {
  readonly mark: string;
  /** Folder of the revision that it replaces. */
  readonly supersedes?: string;
  /** Date of issue, year-month-day. */
  readonly issued: string;
  /** Title and document number, where the copy is another board. */
  readonly board?: string;
  readonly document?: string;
}

/**
 * The spec of the next revision: a draft again, with the mark, date and predecessor given; every comment and the order of the
 * engineer stay as they are.
 */
export function renewed(text: string, { mark, supersedes, issued, board, document }: Renewal): string {
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const without = text.replace(/^supersedes:[^\r\n]*\r?\n?/m, '');
  const lines: [string, string | undefined][] = [
    ['board', board],
    ['document', document],
    ['revision', supersedes === undefined ? mark : `${mark}${eol}supersedes: ${supersedes}`],
    ['issued', issued],
    ['status', 'draft'],
  ];
  return lines.reduce((now, [key, value]) => (value === undefined ? now : withLine(now, key, value)), without);
}

/** One top-level key with another value; a comment behind it stays. */
const withLine = (text: string, key: string, value: string): string =>
  text.replace(
    new RegExp(`^${key}:[^\\r\\n]*?(?<comment>[ \\t]+#[^\\r\\n]*)?$`, 'm'),
    (_, comment: string | undefined) => `${key}: ${value}${comment ?? ''}`,
  );

/**
 * The name after this one: its last letter or number advanced, a new place where it ends. Undefined where it ends in neither.
 * @example advanced('rev-a') // 'rev-b'
 * @example advanced('rev-z') // 'rev-aa'
 * @example advanced('1.9') // '1.10'
 */
export function advanced(name: string): string | undefined {
  const number = /^(.*?)(\d+)$/.exec(name);
  if (number) return number[1]! + (BigInt(number[2]!) + 1n).toString().padStart(number[2]!.length, '0');
  const tail = /(?:^|[^A-Za-z])([a-z]{1,2}|[A-Z]{1,2})$/.exec(name)?.[1];
  if (!tail) return undefined;
  return name.slice(0, name.length - tail.length) + nextLetters(tail);
}

function nextLetters(letters: string): string {
  const first = letters === letters.toLowerCase() ? 'a' : 'A';
  const last = first === 'a' ? 'z' : 'Z';
  const end = letters.at(-1)!;
  if (end !== last) return letters.slice(0, -1) + String.fromCharCode(end.charCodeAt(0) + 1);
  return (letters.length > 1 ? nextLetters(letters.slice(0, -1)) : first) + first;
}
