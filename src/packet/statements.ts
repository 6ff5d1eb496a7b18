import type { CheckFinding } from '../analysis/findings.ts';
import { typeset, typesetTerms } from '../expression/readings/typeset.ts';
import type { Tree } from '../expression/tree.ts';
import type { Check } from '../spec/board.ts';
import { mentioned } from '../spec/names.ts';
import { type Figure, figureText, outward, plain, toSi } from './figures.ts';
import { math } from './inline.ts';
import { marginText } from './margins.ts';
import type { Review } from './review.ts';
import { parted, symbolLeaves } from './symbols.ts';
import type { Text } from './text.ts';

/** What must hold, as symbols: V_out ≤ V_fs; in pieces between which a narrow column may break. */
export function mustHold(check: Check): Text {
  const leaves = symbolLeaves([check.left, check.right], parted(check.id).circuit);
  const [first, ...more] = typesetTerms(check.right, leaves);
  const sign = check.sense === 'atMost' ? '\\le' : '\\ge';
  const left = typesetTerms(check.left, leaves);
  const pieces = [...left.slice(0, -1), `${left.at(-1)!} ${sign} ${first}`, ...more];
  return pieces.flatMap((tex, i) => (i ? [' ', math(signed(tex))] : [math(tex)]));
}

// A sign at the start of a piece keeps the space of an operator between two terms.
const signed = (tex: string): string => (/^[+-]/.test(tex) ? `{}${tex}` : tex);

/** The left side at the worst corner, rounded toward failure, in the unit of the limit. */
export function worstLeft(check: Check, { limit, worst_slack: slack }: CheckFinding): Figure | undefined {
  if (limit === null || slack === null) return undefined;
  const size = slack * check.unit.scale;
  const si = toSi(limit, check.unit) + (check.sense === 'atMost' ? -size : size);
  return outward(settledAt(si, size, check), check.unit, check.sense === 'atMost' ? 'up' : 'down');
}

/** Subtracting leaves dust in the last bits where the limit is much larger than what is left. */
const settledAt = (si: number, size: number, { unit }: Check): number =>
  Math.abs(si - unit.offset) < 1e-12 * Math.abs(size) ? unit.offset : si;

/** The thinnest check of several in a sentence: what it comes to, and what is allowed. */
export function worstSentence(review: Review, finding: CheckFinding): Text {
  const check = review.checks.get(finding.id)!;
  const left = worstLeft(check, finding);
  if (!left) return [`It could not be assessed: ${finding.reason ?? 'an input is missing'}.`];
  const limit = figureText(plain(toSi(finding.limit!, check.unit), check.unit));
  const reaches = check.sense === 'atMost' ? ' reaches ' : ' falls to ';
  const bound = check.sense === 'atMost' ? `at most ${limit} is allowed` : `at least ${limit} is needed`;
  const tex = typeset(check.left, symbolLeaves([check.left, check.right], parted(check.id).circuit));
  return ['At worst ', math(tex), reaches, figureText(left), ` where ${bound}, a margin of ${marginText(finding)}.`];
}

/** Whether a side of a check is the same on every board and under every condition. */
export function isFixed(review: Review, tree: Tree): boolean {
  return [...mentioned(tree)].every((id) => {
    const value = review.inputs.get(id)?.value;
    if (value?.kind === 'exact') return true;
    const own = value?.kind === 'expression' ? value.tree : review.results.get(id)?.tree;
    return own !== undefined && isFixed(review, own);
  });
}
