import type { Corner, ResultFinding } from '../../analysis/findings.ts';
import { valuesAt } from '../../analysis/values-at.ts';
import { typesetTerms } from '../../expression/readings/typeset.ts';
import { evaluateTree } from '../../expression/readings/value.ts';
import { formatValue } from '../../quantity/figure.ts';
import type { Unit } from '../../quantity/unit.ts';
import type { Check, Result } from '../../spec/board.ts';
import type { Equation, EquationLine } from '../block.ts';
import { conditionsText, partsText } from '../corners.ts';
import { type Figure, figureTex, figureText, outward, plain, toSi } from '../figures.ts';
import { joined } from '../inline.ts';
import type { Review } from '../review.ts';
import { resultStrip } from '../strips.ts';
import { idTex, parted, symbolLeaves } from '../symbols.ts';
import type { Text } from '../text.ts';
import { usedIn } from '../trail.ts';
import { sentence } from '../words.ts';

/** One result: its equation as symbols, with the typical numbers, and with those of the corner that matters. */
export function equationOf(review: Review, result: Result): Equation {
  const finding = review.findings.results[result.id]!;
  const { worst } = finding;
  const varies = worst.max > worst.min;
  const side = hurtingSide(review, result);
  const corner = side === 'max' ? worst.at_max : worst.at_min;
  const strip = resultStrip(review, result, side);
  return {
    kind: 'equation',
    id: result.id,
    number: review.trail.equations.get(result.id)!,
    intro: [`${result.says}:`],
    left: idTex(result.id),
    lines: [
      { label: 'symbols', terms: typesetTerms(result.tree, symbolLeaves(result.tree, parted(result.id).circuit)) },
      line(review, result, 'typical', review.typical, formatValue(toSi(finding.nominal, result.unit), result.unit)),
      ...(varies
        ? [line(review, result, 'worst', valuesAt(review.board, corner), worstFigure(finding, result.unit, side))]
        : []),
    ],
    ...(strip ? { strip } : {}),
    notes: [
      ...source(review, result),
      ...(varies ? cornerNotes(review, finding, side, corner, result) : [['The same on every board.']]),
      ...uses(review, result),
    ],
    ...(review.changes.ids.has(result.id) ? { changed: true } : {}),
    ...(isThin(review, result) ? { thin: true } : {}),
  };
}

/** Whether a check that mentions the result holds by less than was asked for, or not at all. */
const isThin = ({ trail, judged }: Review, { id }: Result): boolean =>
  (trail.limits.get(id) ?? []).some((check) => judged.get(check.id)!.verdict !== 'pass');

export const worstFigure = ({ worst }: ResultFinding, unit: Unit, side: 'min' | 'max'): Figure =>
  outward(toSi(side === 'max' ? worst.max : worst.min, unit), unit, side === 'max' ? 'up' : 'down');

/** A line with numbers put in: each symbol's own value at that corner, and the result as it was found. */
function line(
  review: Review,
  result: Result,
  label: 'typical' | 'worst',
  values: ReadonlyMap<string, number>,
  figure: Figure,
): EquationLine {
  const symbol = (id: string): string => {
    const unit = (review.inputs.get(id) ?? review.results.get(id)!).unit;
    return figureTex(plain(values.get(id)!, unit));
  };
  return { label, terms: typesetTerms(result.tree, { symbol }), result: figure };
}

/**
 * The end of a result's range that its thinnest check minds: the one at which the check's slack is less, everything else
 * typical. The greatest where no check mentions it.
 */
export function hurtingSide(review: Review, result: Result): 'min' | 'max' {
  const checks = review.trail.limits.get(result.id) ?? [];
  const rank = (check: Check) => review.findings.ranking.indexOf(check.id);
  const thinnest = checks.toSorted((a, b) => rank(a) - rank(b))[0];
  if (!thinnest) return 'max';
  const { worst } = review.findings.results[result.id]!;
  const slackAt = (value: number): number => {
    const lookup = (id: string) => (id === result.id ? toSi(value, result.unit) : review.typical.get(id)!);
    const [left, right] = [evaluateTree(thinnest.left, lookup), evaluateTree(thinnest.right, lookup)];
    return thinnest.sense === 'atMost' ? right - left : left - right;
  };
  return slackAt(worst.min) < slackAt(worst.max) ? 'min' : 'max';
}

function source(review: Review, result: Result): Text[] {
  if (!result.source) return [];
  const sources = review.circuits.get(parted(result.id).circuit ?? '')?.sources ?? {};
  return [[sentence(sources[result.source] ?? result.source)]];
}

function cornerNotes(
  review: Review,
  { worst }: ResultFinding,
  side: 'min' | 'max',
  corner: Corner,
  { unit }: Result,
): Text[] {
  const conditions = conditionsText(review, corner);
  const parts = partsText(review, corner);
  const caseName = caseThatMatters(review, corner, side === 'max' ? worst.max_case : worst.min_case);
  const where = joined(
    [
      ...(conditions.length ? [conditions] : []),
      ...(caseName ? [[`case ${caseName}`] as Text] : []),
      ...(parts.length ? [parts] : []),
    ],
    '; ',
  );
  const opening = `${side === 'max' ? 'Highest' : 'Lowest'}${conditions.length || caseName ? ' at ' : ' with parts '}`;
  return [[opening, ...where, '. ', closure(worst, side, unit)]];
}

/** The case is named where it narrows a condition that has a part in the corner. */
function caseThatMatters({ board }: Review, corner: Corner, name: string | undefined): string | undefined {
  const ranges = board.cases.find((one) => one.name === name)?.ranges;
  return ranges && Object.keys(corner).some((id) => ranges.has(id)) ? name : undefined;
}

/** How the worst case was closed: what no board can pass. */
function closure(worst: ResultFinding['worst'], side: 'min' | 'max', unit: Unit): string {
  if (worst.proven) return 'Proven: nothing in between goes further.';
  const bound =
    side === 'max'
      ? outward(toSi(worst.max_bound, unit), unit, 'up')
      : outward(toSi(worst.min_bound, unit), unit, 'down');
  return side === 'max'
    ? `Not closed: proven only that it stays below ${figureText(bound)}.`
    : `Not closed: proven only that it stays above ${figureText(bound)}.`;
}

function uses(review: Review, { id }: Result): Text[] {
  const text = usedIn(review.trail, id);
  return text.length ? [['Used in ', ...text, '.']] : [];
}
