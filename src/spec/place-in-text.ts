import type { Problem } from './problem.ts';

type What = Pick<Problem, 'code' | 'found' | 'expected'> & { readonly hint?: string };

/** Makes problems of offsets into a text, with line, column and the line itself: for files that are not YAML. */
export function placesIn(text: string, file: string): (start: number, end: number, key: string, what: What) => Problem {
  const rows = text.split('\n');
  const starts: number[] = [0];
  for (const row of rows) starts.push(starts.at(-1)! + row.length + 1);
  return (start, end, key, { code, found, expected, hint }) => {
    const index = Math.max(0, Math.min(rows.length - 1, starts.findIndex((at) => at > start) - 1));
    const row = rows[index]!.replace(/\r$/, '');
    const column = Math.min(start - starts[index]!, row.length) + 1;
    return {
      code,
      file,
      line: index + 1,
      column,
      key,
      found,
      expected,
      ...(hint === undefined ? {} : { hint }),
      excerpt: {
        ...(index > 0 ? { before: rows[index - 1]!.replace(/\r$/, '') } : {}),
        text: row,
        length: Math.max(1, Math.min(end - start, row.length - column + 1)),
      },
    };
  };
}
