import type { Book } from '../site/calculate.ts';
import type { CalculationFailure } from '../site/calculated.ts';
import type { DesignFolder } from '../site/designs.ts';
import type { Options } from '../site/options.ts';
import type { Finished } from './finished.ts';
import type { Printer } from './printer.ts';
import type { Progress } from './progress.ts';

/** What a run has to do, and with what. */
export interface Task {
  readonly asked: readonly DesignFolder[];
  /** Every design in the folder. */
  readonly all: readonly DesignFolder[];
  readonly book: Book;
  readonly options: Options;
  readonly progress: Progress;
  readonly printer: Printer;
}

export interface Release {
  readonly board: string;
  readonly revision: string;
  /** Where its record belongs, and what it has to say. */
  readonly path: string;
  readonly listing: string;
}

/** What came of the revisions that were asked for. */
export interface Made {
  readonly finished: readonly Finished[];
  readonly failures: readonly CalculationFailure[];
  /** Revisions whose release is not written down yet. */
  readonly releases: readonly Release[];
}
