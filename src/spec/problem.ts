/** One thing wrong with a file an engineer wrote, as data: what stands where, what was expected, the next step. */
export interface Problem {
  /** Permanent name of the kind of problem; people search for it. */
  readonly code: string;
  readonly file: string;
  /** 1-based; the column counts characters, so that an editor jumps there. */
  readonly line: number;
  readonly column: number;
  /** Path of the key in the file: `circuits.bus_sense.given.R_top`. */
  readonly key: string;
  readonly found: string;
  readonly expected: string;
  readonly hint?: string;
  readonly excerpt: Excerpt;
}

/** The line before, the line itself and how much of it to underline. */
export interface Excerpt {
  readonly before?: string;
  readonly text: string;
  readonly length: number;
}

const widest = 110;

/**
 * A problem as printed on a terminal or in the page of a board that cannot be built.
 * @example
 * designs/cart/rev-a/spec.yaml:12:13  unknown-unit
 *   circuits.pack.given.R_cell: found the unit `mohn`; expected a unit such as mΩ.
 *   11 |     V_cell: 3.0 V to 4.2 V
 *   12 |     R_cell: 9 mohn
 *      |               ^^^^
 *   Did you mean mohm?
 */
export function showProblem(problem: Problem): string {
  const { excerpt, line } = problem;
  const gutter = String(line).length;
  const row = (label: string, text: string) => `  ${label.padStart(gutter)} | ${text}`.trimEnd();
  const { text, column } = windowed(printable(excerpt.text), problem.column);
  const under = ' '.repeat(column - 1) + '^'.repeat(Math.max(1, Math.min(excerpt.length, widest - column)));
  return [
    `${printable(problem.file)}:${line}:${problem.column}  ${problem.code}`,
    `  ${problem.key ? `${printable(problem.key)}: ` : ''}found ${printable(problem.found)}; expected ${printable(problem.expected)}.`,
    ...(excerpt.before === undefined ? [] : [row(String(line - 1), windowed(printable(excerpt.before), 1).text)]),
    row(String(line), text),
    row('', under),
    ...(problem.hint ? [`  ${printable(problem.hint)}`] : []),
  ].join('\n');
}

/** Problems as they stand in their file, from top to bottom. */
export const inOrder = (problems: readonly Problem[]): Problem[] =>
  problems.toSorted((a, b) => a.line - b.line || a.column - b.column);

export const showProblems = (problems: readonly Problem[]): string => problems.map(showProblem).join('\n\n');

/** Control characters would let a file write to the reader's terminal; they are shown as pictures of themselves. */
function printable(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  return text.replace(/[\u0000-\u001f\u007f-\u009f]/g, (c) =>
    c < ' ' ? String.fromCharCode(0x2400 + c.charCodeAt(0)) : '\ufffd',
  );
}

/** Cuts a long line around the spot, so that the marks stay under what they mark. */
function windowed(text: string, column: number): { text: string; column: number } {
  if (text.length <= widest) return { text, column };
  const from = Math.max(0, Math.min(column - 1 - Math.floor(widest / 2), text.length - widest));
  return { text: (from > 0 ? '…' : '') + text.slice(from + (from > 0 ? 1 : 0), from + widest), column: column - from };
}
