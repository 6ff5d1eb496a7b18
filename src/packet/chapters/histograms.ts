import type { CheckFinding, SpreadFinding } from '../../analysis/findings.ts';
import type { Unit } from '../../quantity/unit.ts';
import { parseUnit } from '../../quantity/units.ts';
import type { Check } from '../../spec/board.ts';
import type { Figure } from '../block.ts';
import { conditionsText } from '../corners.ts';
import { figureText, outward, plain, toSi, unitFor } from '../figures.ts';
import { marginText } from '../margins.ts';
import type { Numbering } from '../numbering.ts';
import { failText } from '../numbers.ts';
import type { Histogram } from '../plot.ts';
import { type Review, rankedChecks } from '../review.ts';
import { isFixed } from '../statements.ts';
import type { Text } from '../text.ts';
import { checkLink } from '../trail.ts';
import { grouped } from '../words.ts';

const most = 6;

/** Histograms of the thinnest checks that parts can move: two abreast. */
export function histogramsOf(review: Review, numbers: Numbering): Figure[] {
  const shown = rankedChecks(review)
    .filter(({ spread }) => spread !== null)
    .slice(0, most);
  return shown.map((finding) => figureOf(review, finding, finding.spread!, numbers.figure()));
}

/** The histogram of one check. */
export function figureOf(review: Review, finding: CheckFinding, spread: SpreadFinding, number: string): Figure {
  const plot = plotOf(review, finding, spread);
  const at = conditionsText(review, spread.at);
  const limits = plot.limits.map(({ label }) => label).join(', ');
  return {
    kind: 'figure',
    id: `histogram-${finding.id}`,
    number,
    caption: [checkLink(finding.id), ...says(review, finding), ...(at.length ? [' At ', ...at, '.'] : [])],
    plot,
    width: 'half',
    alt: `Histogram of ${plot.title} for ${finding.id} over ${grouped(review.findings.trials)} boards; ${limits}; worst margin ${marginText(finding)}.`,
  };
}

function says({ findings }: Review, { fail_fraction: boards }: CheckFinding): Text {
  if (!boards) return ['.'];
  const range = `${failText(boards)} at 95\u00a0%`;
  if (boards.estimate === 0) return [`: none of ${grouped(findings.trials)} boards oversteps the limit, ${range}.`];
  return [
    `: ${grouped(Math.round(boards.estimate * findings.trials))} of ${grouped(findings.trials)} boards overstep the limit, ${range}.`,
  ];
}

/**
 * A slack as bars: turned into what is limited where the limit is the same on every board, else the slack itself, whose
 * limit is zero, for then the limit moves with the parts.
 */
function plotOf(review: Review, finding: CheckFinding, spread: SpreadFinding): Histogram {
  const check = review.checks.get(finding.id)!;
  const scale =
    finding.limit !== null && isFixed(review, check.right) ? limitedScale(review, check, finding) : slackScale(finding);
  const { from, to, counts } = spread.histogram;
  const step = (to - from) / counts.length;
  const edges = Array.from({ length: counts.length + 1 }, (_, i) => scale.at(from + i * step));
  const turned = edges[0]! > edges.at(-1)!;
  const chances = [
    ['0.00135', '0.135\u00a0%'],
    ['0.5', 'median'],
    ['0.99865', '99.865\u00a0%'],
  ] as const;
  const quantiles = chances.map(([chance, label]) => ({ at: scale.at(spread.quantiles[chance]), label }));
  return {
    kind: 'histogram',
    title: scale.title,
    edges: turned ? edges.toReversed() : edges,
    counts: turned ? counts.toReversed() : counts,
    limits: [{ at: scale.limit, forbidden: scale.forbidden, label: scale.limitLabel }],
    quantiles: turned ? quantiles.toReversed().map(({ at }, i) => ({ at, label: quantiles[i]!.label })) : quantiles,
    worst:
      finding.worst_slack === null ? [] : [{ at: scale.at(finding.worst_slack), label: `worst ${scale.worstNumber}` }],
  };
}

interface Scale {
  readonly title: string;
  /** From slack, in the unit of the finding, to the number drawn. */
  readonly at: (slack: number) => number;
  readonly limit: number;
  readonly forbidden: 'above' | 'below';
  readonly limitLabel: string;
  readonly worstNumber: string;
}

function limitedScale(review: Review, check: Check, finding: CheckFinding): Scale {
  const sign = check.sense === 'atMost' ? -1 : 1;
  const limitSi = toSi(finding.limit!, check.unit);
  const worstSi = limitSi + sign * finding.worst_slack! * check.unit.scale;
  const drawn = unitFor([limitSi, worstSi], check.unit);
  const inDrawn = (si: number) => (si - drawn.offset) / drawn.scale;
  const result = check.left.kind === 'symbol' ? review.results.get(check.left.name) : undefined;
  return {
    title: titled(result?.says ?? `Left side of ${check.name}`, drawn),
    at: (slack) => inDrawn(limitSi + sign * slack * check.unit.scale),
    limit: inDrawn(limitSi),
    forbidden: check.sense === 'atMost' ? 'above' : 'below',
    limitLabel: `limit ${figureText(plain(limitSi, check.unit))}`,
    worstNumber: outward(worstSi, drawn, check.sense === 'atMost' ? 'up' : 'down').number,
  };
}

function slackScale(finding: CheckFinding): Scale {
  const unit = parseUnit(finding.unit);
  const ends = [finding.worst_slack ?? 0, finding.spread!.histogram.to].map((x) => toSi(x, unit));
  const drawn = unitFor(ends, unit);
  const at = (slack: number) => (slack * unit.scale) / drawn.scale;
  return {
    title: titled('Slack', drawn),
    at,
    limit: 0,
    forbidden: 'below',
    limitLabel: 'no slack left',
    worstNumber: outward(toSi(finding.worst_slack ?? 0, unit), drawn, 'down').number,
  };
}

const titled = (what: string, unit: Unit): string => (unit.text ? `${what}, ${unit.text}` : what);
