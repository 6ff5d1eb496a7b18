import type { SweepFinding, SweepPoint } from '../analysis/findings.ts';
import type { Unit } from '../quantity/unit.ts';
import { figureText, outward, plain, toSi } from './figures.ts';

/** One curve with the units that its numbers stand in. */
export interface Seen {
  readonly sweep: SweepFinding;
  readonly over: Unit;
  readonly of: Unit;
  /** Unit of the check's slack, where one limits the result. */
  readonly slack?: Unit;
}

/**
 * What to see in a curve, in one or two sentences made from its numbers: where the limit is overstepped or comes nearest; where
 * no check limits it, where the worst case peaks or which way it goes.
 * @example 'Comes nearest to the limit at 70 A, with 12.9 K left.'
 */
export function whatToSee(seen: Seen): string {
  const points = seen.sweep.runs.flat();
  return points.some(({ slack }) => slack !== undefined) ? againstLimit(seen, points) : shapeOf(seen, points);
}

const place = ({ over }: Seen, x: number): string => figureText(plain(toSi(x, over), over, 3));

function againstLimit(seen: Seen, all: readonly SweepPoint[]): string {
  const points = all.filter(({ slack }) => slack !== undefined);
  const thinnest = points.reduce((a, b) => (b.slack! < a.slack! ? b : a));
  const [first, last] = [points[0]!, points.at(-1)!];
  if (thinnest.slack! >= 0) {
    const flat = points.every(({ slack }) => Math.abs(slack! - thinnest.slack!) <= 1e-6 * Math.abs(thinnest.slack!));
    const where = flat
      ? 'The limit is equally near all along'
      : `Comes nearest to the limit at ${place(seen, thinnest.x)}`;
    return `${where}, with ${left(seen, thinnest.slack!)} left.`;
  }
  if (points.every(({ slack }) => slack! < 0))
    return `Beyond the limit all along, by up to ${left(seen, thinnest.slack!)}.`;
  const crossing = seen.sweep.axis === 'choice' ? 'Would hold' : 'Holds';
  if (first.slack! < 0 && last.slack! >= 0) return `${crossing} from ${turn(seen, points, 'rising')} up.`;
  if (first.slack! >= 0 && last.slack! < 0) return `${crossing} up to ${turn(seen, points, 'falling')}.`;
  if (first.slack! < 0) return `${crossing} from ${turn(seen, points, 'rising')} to ${turn(seen, points, 'falling')}.`;
  return `Oversteps the limit round ${place(seen, thinnest.x)}, by up to ${left(seen, thinnest.slack!)}.`;
}

/** Slack as printed: what is left is rounded down, what lacks is rounded up. */
function left({ slack, of }: Seen, value: number): string {
  const unit = slack ?? of;
  return figureText(outward(Math.abs(value) * unit.scale, { ...unit, offset: 0 }, value < 0 ? 'up' : 'down', 3));
}

/** Where the slack changes its sign, on the straight line between two points; printed on the side that holds. */
function turn(seen: Seen, points: readonly SweepPoint[], way: 'rising' | 'falling'): string {
  const pairs = points.slice(1).map((b, i) => [points[i]!, b] as const);
  const crosses = ([a, b]: readonly [SweepPoint, SweepPoint]): boolean =>
    way === 'rising' ? a.slack! < 0 && b.slack! >= 0 : a.slack! >= 0 && b.slack! < 0;
  const [a, b] = (way === 'rising' ? pairs.findLast(crosses) : pairs.find(crosses))!;
  const x = a.x + ((b.x - a.x) * a.slack!) / (a.slack! - b.slack!);
  return figureText(outward(toSi(x, seen.over), seen.over, way === 'rising' ? 'up' : 'down', 3));
}

function shapeOf(seen: Seen, points: readonly SweepPoint[]): string {
  const peak = points.reduce((a, b) => (b.max > a.max ? b : a));
  const trough = points.reduce((a, b) => (b.min < a.min ? b : a));
  const [first, last] = [points[0]!, points.at(-1)!];
  const greatest = figureText(outward(toSi(peak.max, seen.of), seen.of, 'up', 3));
  const least = figureText(outward(toSi(trough.min, seen.of), seen.of, 'down', 3));
  if (peak !== first && peak !== last) return `Peaks at ${place(seen, peak.x)}, with up to ${greatest}.`;
  if (trough !== first && trough !== last)
    return `Least at ${place(seen, trough.x)}, down to ${least}; greatest at ${place(seen, peak.x)}, up to ${greatest}.`;
  return peak === last
    ? `Rises from ${least} at the least to ${greatest} at the most.`
    : `Falls from ${greatest} at the most to ${least} at the least.`;
}
