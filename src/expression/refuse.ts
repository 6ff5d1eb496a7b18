import { TextError, type TextProblem } from '../quantity/text-problem.ts';
import type { Span } from './tree.ts';

/** Throws the TextError of one problem in the text of an expression. */
export function refuse(code: string, at: Span, found: string, expected: string, hint?: string): never {
  const problem: TextProblem = { code, start: at.start, end: at.end, found, expected, ...(hint ? { hint } : {}) };
  throw new TextError(problem);
}
