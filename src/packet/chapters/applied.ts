import type { CheckFinding } from '../../analysis/findings.ts';
import type { Input } from '../../spec/board.ts';
import { mentioned } from '../../spec/names.ts';
import { figureText, fixed, plain, toSi } from '../figures.ts';
import { dash, link } from '../inline.ts';
import type { Review } from '../review.ts';
import { worstLeft } from '../statements.ts';
import type { Text } from '../text.ts';
import { checkAnchor } from '../trail.ts';

/** What a rating bears in the worst case, as a share of what is allowed of it, and the check that says so. */
export interface Applied {
  readonly ratio: number;
  readonly check: CheckFinding;
}

/**
 * The check that loads a rating most: at most something, with the rating in what is allowed.
 * @returns undefined where the input is no rating, or no such check could be assessed
 */
export function appliedTo(review: Review, input: Input): Applied | undefined {
  if (!input.rating) return undefined;
  const loads = review.findings.checks.flatMap((finding): Applied[] => {
    const check = review.checks.get(finding.id)!;
    if (check.sense !== 'atMost' || finding.margin === null || !(finding.limit! > 0)) return [];
    return mentioned(check.right).has(input.id) ? [{ ratio: 1 - finding.margin, check: finding }] : [];
  });
  return loads.toSorted((a, b) => b.ratio - a.ratio)[0];
}

/** `0.64 of 2.333 W`, rounded up, as a link to its check. */
export function appliedText(review: Review, input: Input): Text {
  const applied = appliedTo(review, input);
  if (!applied) return dash;
  const check = review.checks.get(applied.check.id)!;
  const allowed = figureText(plain(toSi(applied.check.limit!, check.unit), check.unit));
  const bears = worstLeft(check, applied.check);
  return [
    link(`${fixed(applied.ratio, 2, 'up')} of ${allowed}`, checkAnchor(check.id)),
    ...(bears ? [` (${figureText(bears)})`] : []),
  ];
}
