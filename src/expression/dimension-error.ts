/** What an operation found wrong with the dimensions of its arguments; the reading adds where it stands in the text. */
export interface DimensionFacts {
  /** The argument at fault, counted from 0. */
  readonly argument: number;
  /** What stands there, in words: `R_top, a resistance`. */
  readonly found: string;
  /** What would be right: `a voltage, as V_in is`. */
  readonly expected: string;
  readonly hint?: string;
}

export class DimensionError extends Error {
  readonly facts: DimensionFacts;
  constructor(facts: DimensionFacts) {
    super(`found ${facts.found}; expected ${facts.expected}`);
    this.name = 'DimensionError';
    this.facts = facts;
  }
}
