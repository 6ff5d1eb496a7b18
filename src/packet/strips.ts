import type { CheckFinding, ResultFinding } from '../analysis/findings.ts';
import type { Unit } from '../quantity/unit.ts';
import type { Check, Result } from '../spec/board.ts';
import { aligned, figureText, plain, toSi, unitFor } from './figures.ts';
import { marginText } from './margins.ts';
import { failText } from './numbers.ts';
import type { Review } from './review.ts';
import type { Strip } from './strip.ts';

/** The 0.135 %, 50 % and 99.865 % quantiles: ±3 deviations of a normal, and the middle. */
type Spread = readonly [low: number, median: number, high: number];

export const quantilesOf = ({ quantiles }: NonNullable<ResultFinding['spread']>): Spread => [
  quantiles['0.00135'],
  quantiles['0.5'],
  quantiles['0.99865'],
];

/** Limits on a result: those of checks that compare the bare result with something, thinnest first. Numbers in its unit. */
export function limitsOn(
  review: Review,
  result: Result,
): { check: Check; finding: CheckFinding; at: number; forbidden: 'above' | 'below' }[] {
  return (review.trail.limits.get(result.id) ?? [])
    .flatMap((check) => {
      const finding = review.judged.get(check.id)!;
      if (check.left.kind !== 'symbol' || check.left.name !== result.id || finding.limit === null) return [];
      const at = (toSi(finding.limit, check.unit) - result.unit.offset) / result.unit.scale;
      return [{ check, finding, at, forbidden: check.sense === 'atMost' ? ('above' as const) : ('below' as const) }];
    })
    .sort((a, b) => (a.finding.margin ?? 0) - (b.finding.margin ?? 0));
}

/** The range of a result with its limits, for the margin beside its equation; none where it is the same on every board. */
export function resultStrip(review: Review, result: Result, worse: 'min' | 'max'): Strip | undefined {
  const finding = review.findings.results[result.id]!;
  const { worst, nominal, spread } = finding;
  if (!(worst.max > worst.min)) return undefined;
  const limits = limitsOn(review, result);
  const shown = limits.filter(({ at }) => withinReach(at, worst));
  const target = shown[0] && targetOf(shown[0]);
  const [low, high] = endTexts(worst, result.unit);
  return {
    scale: scaleFor([worst.min, worst.max, ...shown.map(({ at }) => at)]),
    worst: [worst.min, worst.max],
    typical: nominal,
    ...(spread ? { spread: quantilesOf(spread) } : {}),
    limits: shown.map(({ at, forbidden }) => ({ at, forbidden })),
    ...(target === undefined ? {} : { target }),
    labels: [
      { at: worst.min, text: low, worst: worse === 'min' },
      { at: worst.max, text: high, worst: worse === 'max' },
    ],
    says: `${result.says}: ${low} to ${high} at worst, typically ${figureText(plain(toSi(nominal, result.unit), result.unit))}${limits.map(limitWords).join('')}.`,
  };
}

const limitWords = ({ check, at, forbidden }: { check: Check; at: number; forbidden: 'above' | 'below' }): string =>
  `; limit ${forbidden === 'above' ? 'at most' : 'at least'} ${figureText(plain(toSi(at, check.unit), check.unit))}`;

/** A limit far away would squeeze the range to a dot. */
function withinReach(at: number, { min, max }: ResultFinding['worst']): boolean {
  const span = Math.max(max - min, Math.abs(max), Math.abs(min)) * 2;
  return at >= min - span && at <= max + span;
}

/** Value at which the margin would be just what is asked for. */
function targetOf({
  finding,
  at,
  forbidden,
}: {
  finding: CheckFinding;
  at: number;
  forbidden: 'above' | 'below';
}): number | undefined {
  if (finding.margin === null || finding.target <= 0) return undefined;
  return forbidden === 'above' ? at - finding.target * Math.abs(at) : at + finding.target * Math.abs(at);
}

export function endTexts(
  { min, max }: { readonly min: number; readonly max: number },
  unit: Unit,
): [low: string, high: string] {
  const { low, high, unit: printed } = ends({ min, max }, unit);
  return [figureText({ number: low, unit: printed }), figureText({ number: high, unit: printed })];
}

/** A worst case as words: `1.671 to 3.390 V`; one figure where both ends are the same. */
export function rangeText(worst: { readonly min: number; readonly max: number }, unit: Unit): string {
  const { low, high, unit: printed } = ends(worst, unit);
  return figureText({ number: low === high ? low : `${low} to ${high}`, unit: printed });
}

function ends({ min, max }: { readonly min: number; readonly max: number }, unit: Unit) {
  const values = [toSi(min, unit), toSi(max, unit)];
  const shared = unitFor(values, unit);
  const [low, high] = aligned(values, shared, ['down', 'up']) as [string, string];
  return { low, high, unit: shared.text };
}

/** A scale that shows all values with a little air at both ends. */
export function scaleFor(values: readonly number[]): [from: number, to: number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const air = (high - low || Math.abs(high) || 1) * 0.06;
  return [low - air, high + air];
}

/** A check in per cent of its limit, which stands at 0; none where the limit is zero or nothing was assessed. */
export function marginStrip(check: CheckFinding, scale: readonly [from: number, to: number]): Strip | undefined {
  const { margin, worst_slack: slack, spread, target, nominal_slack: nominal } = check;
  if (margin === null || slack === null) return undefined;
  const each = perCent(check);
  const bar = spread && each ? (quantilesOf(spread).map((x) => x * each) as unknown as Spread) : undefined;
  // The line runs from the worst case to the boards: its other end is no worst case.
  const reach = Math.max(margin * 100, bar?.[0] ?? (nominal !== null && each ? nominal * each : margin * 100));
  return {
    scale,
    worst: [margin * 100, reach],
    oneEnded: true,
    ...(bar ? { spread: bar } : {}),
    limits: [{ at: 0, forbidden: 'below' }],
    ...(target > 0 ? { target: target * 100 } : {}),
    labels: [],
    says: `${check.id}: worst margin ${marginText(check)}${check.fail_fraction ? `; boards that fail ${failText(check.fail_fraction)}` : ''}.`,
  };
}

/** Per cent of the limit for each unit of slack. */
function perCent({ margin, worst_slack: slack, limit }: CheckFinding): number | undefined {
  if (margin !== null && slack) return (margin / slack) * 100;
  return limit ? 100 / Math.abs(limit) : undefined;
}
