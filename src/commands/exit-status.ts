import type { Verdict } from '../analysis/findings.ts';
import type { ExitStatus } from './run.ts';

/** One revision as the exit status sees it. */
export interface Outcome {
  readonly board: string;
  readonly revision: string;
  readonly verdict: Verdict;
  /** Folder of the revision that it replaces. */
  readonly supersedes?: string | undefined;
  /** Least margin of the checks that are not accepted, as a ratio. */
  readonly thinnest?: number | undefined;
}

/**
 * 1 when a check of some revision fails or could not be assessed, else 0. A revision that another one of the same run
 * supersedes is history: what it got wrong is why the other one exists. Asked for by itself, it counts.
 * @param failUnder  a margin below this ratio counts as a failure too
 */
export function statusOf(outcomes: readonly Outcome[], failUnder = Number.NEGATIVE_INFINITY): ExitStatus {
  const replaced = new Set(outcomes.flatMap(({ board, supersedes }) => (supersedes ? [`${board}/${supersedes}`] : [])));
  const bad = outcomes.some(
    ({ board, revision, verdict, thinnest = Number.POSITIVE_INFINITY }) =>
      !replaced.has(`${board}/${revision}`) &&
      (verdict === 'fail' || verdict === 'not assessed' || thinnest < failUnder),
  );
  return bad ? 1 : 0;
}
