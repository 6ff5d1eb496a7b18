import type { Verdict } from './findings.ts';

/**
 * Verdict on one check. `bound` is the slack that is proven never to be undercut, `slack` the least one achieved;
 * a check that only the bound puts below zero is not failed, but neither is it proven to hold: it is marginal.
 * @param margin  worst slack over the size of the limit; null when the limit is zero, and then the target cannot apply
 */
export function verdictOn(
  slack: number,
  bound: number,
  margin: number | null,
  target: number,
  deviation: boolean,
): Verdict {
  if (slack < 0) return deviation ? 'accepted' : 'fail';
  if (bound < 0 && slack > 0) return 'marginal';
  return margin !== null && margin < target ? 'marginal' : 'pass';
}

const gravity: readonly Verdict[] = ['pass', 'accepted', 'marginal', 'not assessed', 'fail'];

/** A board takes the worst verdict that no deviation carries: `accepted` weighs as much as a pass there. */
export function boardVerdict(verdicts: readonly Verdict[]): Verdict {
  const carried = verdicts.map((verdict) => (verdict === 'accepted' ? 'pass' : verdict));
  return carried.reduce(
    (worst, verdict) => (gravity.indexOf(verdict) > gravity.indexOf(worst) ? verdict : worst),
    'pass',
  );
}
