/** What is wrong in one piece of text, as data. Whoever read the file adds where the text stands. */
export interface TextProblem {
  /** Permanent name of the kind of problem, such as `unknown-unit`; people search for it. */
  readonly code: string;
  /** Offsets into the text: the first character that is wrong, and the one after the last. */
  readonly start: number;
  readonly end: number;
  /** What stands there, in words: `the unit "mVolt"`. */
  readonly found: string;
  /** What would be right, with an example: `a unit such as mV`. */
  readonly expected: string;
  /** The next step, where one is known: `Did you mean mV?` */
  readonly hint?: string;
}

/** Thrown by the readers of quantities and expressions. */
export class TextError extends Error {
  readonly problem: TextProblem;
  constructor(problem: TextProblem) {
    super(`${problem.code}: found ${problem.found}; expected ${problem.expected}.`);
    this.name = 'TextError';
    this.problem = problem;
  }
}
