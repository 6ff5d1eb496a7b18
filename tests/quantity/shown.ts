import { TextError } from '../../src/quantity/text-problem.ts';

/** The problem that `read` finds in a text: the text, the place marked under it, and all that is said. */
export function shown(read: (text: string) => unknown, text: string): string {
  try {
    read(text);
  } catch (error) {
    if (!(error instanceof TextError)) throw error;
    const { code, start, end, found, expected, hint } = error.problem;
    const marks = ' '.repeat(start) + '^'.repeat(Math.max(1, end - start));
    return `${text}\n${marks} ${code}\nfound ${found}; expected ${expected}.${hint ? ` ${hint}` : ''}`;
  }
  throw new Error(`${JSON.stringify(text)} was read without a problem.`);
}
