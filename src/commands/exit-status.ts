import type { Verdict } from '../analysis/findings.ts';
import type { ExitStatus } from './run.ts';

/** One revision as the exit status sees it. */
export interface Outcome {
  readonly board: string;
  readonly revision: string;
  readonly verdict: Verdict;
  /** Folder of the revision that it replaces. */
  readonly supersedes?: string | undefined;
}

/**
 * 1 when a check of some revision fails or could not be assessed, else 0. A revision that another one of the same run
 * supersedes is history: what it got wrong is why the other one exists. Asked for by itself, it counts.
 */
export function statusOf(outcomes: readonly Outcome[]): ExitStatus {
  const replaced = new Set(outcomes.flatMap(({ board, supersedes }) => (supersedes ? [`${board}/${supersedes}`] : [])));
  const bad = outcomes.some(
    ({ board, revision, verdict }) =>
      !replaced.has(`${board}/${revision}`) && (verdict === 'fail' || verdict === 'not assessed'),
  );
  return bad ? 1 : 0;
}
