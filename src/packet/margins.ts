import type { CheckFinding, CornerCell } from '../analysis/findings.ts';
import { formatValue } from '../quantity/figure.ts';
import { parseUnit } from '../quantity/units.ts';
import type { Cell } from './block.ts';
import { type Figure, figureText, percent, toSi } from './figures.ts';
import { dash } from './inline.ts';
import { percentText } from './numbers.ts';
import type { Verdict } from './text.ts';
import { capital, counted, inWords } from './words.ts';

/** A margin as printed in running text: `3.4 %`; the slack itself where the limit is zero; a dash where there is none. */
export function marginText(check: CheckFinding): string {
  if (check.margin !== null) return percentText(check.margin);
  return check.worst_slack === null ? '–' : figureText(slackFigure(check));
}

/** The margin of a corner as printed; the slack where the limit is zero. */
export const cornerMargin = ({ margin, worst_slack: slack, unit }: CornerCell): string =>
  margin === null ? figureText(slackFigure({ worst_slack: slack, unit })) : percentText(margin);

/** Least slack, rounded toward failure. */
export const slackFigure = ({ worst_slack, unit }: Pick<CheckFinding, 'worst_slack' | 'unit'>): Figure => {
  const printed = parseUnit(unit);
  return formatValue(toSi(worst_slack!, printed), printed, { digits: 3, round: 'down' });
};

/** For a column headed `Margin, %`. */
export function marginCell(check: CheckFinding): Cell {
  if (check.margin !== null) return { number: percent(check.margin), strong: check.margin < 0 };
  return check.worst_slack === null ? dash : [figureText(slackFigure(check))];
}

export type Counts = Readonly<Record<Verdict, number>>;

export function countsOf(checks: readonly { readonly verdict: Verdict }[]): Counts {
  const of = (verdict: Verdict) => checks.filter((check) => check.verdict === verdict).length;
  return {
    pass: of('pass'),
    marginal: of('marginal'),
    fail: of('fail'),
    accepted: of('accepted'),
    'not assessed': of('not assessed'),
  };
}

const holdsWell = (target: number): string => (target > 0 ? 'with the margin asked for' : 'in the worst case');

/**
 * The verdict on several checks in one or two sentences, answer first.
 * @example verdictSentence({ pass: 52, marginal: 4, accepted: 1, fail: 0, 'not assessed': 0 }, 0.1)
 * // 'No check fails. Of 57 checks, 52 hold with the margin asked for, four hold by less and one is an accepted deviation.'
 */
export function verdictSentence(counts: Counts, target: number): string {
  const all = Object.values(counts).reduce((a, b) => a + b, 0);
  const { pass, marginal, fail, accepted } = counts;
  if (all === 0) return 'Nothing is checked here.';
  if (pass === all)
    return all === 1
      ? `The check holds ${holdsWell(target)}.`
      : `All ${counted(all, 'check')} hold ${holdsWell(target)}.`;
  const groups = [
    pass ? `${inWords(pass)} ${verb(pass, 'hold')} ${holdsWell(target)}` : '',
    marginal ? `${inWords(marginal)} ${verb(marginal, 'hold')} by less` : '',
    accepted ? `${inWords(accepted)} ${accepted === 1 ? 'is an accepted deviation' : 'are accepted deviations'}` : '',
    counts['not assessed'] ? `${inWords(counts['not assessed'])} could not be assessed` : '',
  ].filter(Boolean);
  const opening = fail
    ? `${capital(fail === all ? (all === 1 ? 'the' : 'all') : inWords(fail))} ${fail === all ? (all === 1 ? 'check' : `${inWords(all)} checks`) : `of ${inWords(all)} checks`} ${verb(fail, 'fail')}.`
    : 'No check fails.';
  if (!groups.length) return opening;
  const rest = fail ? (all - fail === 1 ? 'Of the other' : 'Of the others') : `Of ${counted(all, 'check')}`;
  const said = sentenceList(groups);
  if (all === 1) return `The check ${said.replace(/^one /, '')}.`;
  return fail && all - fail === 1
    ? `${opening} The other ${said.replace(/^one /, '')}.`
    : `${opening} ${rest}, ${said}.`;
}

const verb = (count: number, plural: string): string => (count === 1 ? `${plural}s` : plural);
const sentenceList = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
