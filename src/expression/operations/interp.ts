import type { Dimension } from '../../quantity/dimension.ts';
import { DimensionError } from '../dimension-error.ts';
import type { Interval } from '../interval.ts';
import type { Operand, Operation } from '../operation.ts';
import {
  addRanges,
  clampRange,
  divideRanges,
  hull,
  multiplyRanges,
  point,
  range,
  subtractRanges,
  ZERO,
} from '../ranges.ts';
import { called } from '../tex.ts';
import { alike, described } from './demands.ts';

/**
 * Straight lines between points of a data sheet, `interp(x, x1, y1, x2, y2, …)`, with x1 < x2 < … plain numbers.
 * Nothing is made up outside the points: there the value of the nearest point is held, and the range says that it is
 * not certain. The y may be expressions, for a curve that a part scales; the x have no slope, for they
 * never move.
 */
export const interp: Operation = {
  arity: [5, Infinity],
  usage: 'interp(x, x1, y1, x2, y2, …)',
  says: 'Straight lines between data-sheet points, x ascending; held, and marked not certain, outside them',
  dimension: (args) => dimensionOf(args),
  value: (args) => valueAt(args[0]!, args),
  range: (args) => rangeOf(args),
  slope: (args) => slopesAt(args),
  slopeRange: (args) => slopeRanges(args),
  code: (args) => codeOf(args),
  tex: ([x]) => called('\\operatorname{curve}', [x!]),
};

function dimensionOf(args: readonly Operand[]): Dimension {
  if (args.length % 2 === 0) {
    const last = args.length - 1;
    throw new DimensionError({
      argument: last,
      found: `\`${args[last]!.text}\` without its y`,
      expected: 'pairs x, y',
    });
  }
  const xs = [...args.keys()].filter((i) => i % 2 === 1);
  const ys = xs.map((i) => i + 1);
  alike(args, [0, ...xs]);
  for (const i of xs) {
    const x = args[i]!.constant;
    if (x === undefined) {
      throw new DimensionError({
        argument: i,
        found: described(args[i]!),
        expected: 'a plain number for the x of a point',
      });
    }
    if (i > 1 && !(x > args[i - 2]!.constant!)) {
      throw new DimensionError({
        argument: i,
        found: `\`${args[i]!.text}\``,
        expected: `an x above \`${args[i - 2]!.text}\``,
      });
    }
  }
  return alike(args, ys);
}

/**
 * `y1·(x2 − x)/(x2 − x1) + y2·(x − x1)/(x2 − x1)` of the first segment that reaches x: exact at both ends. NaN stays NaN.
 */
function valueAt(x: number, args: readonly number[]): number {
  if (x <= args[1]!) return args[2]!;
  for (let i = 3; i < args.length; i += 2) {
    if (x <= args[i]!) {
      const [x1, y1, x2, y2] = [args[i - 2]!, args[i - 1]!, args[i]!, args[i + 1]!];
      return y1 * ((x2 - x) / (x2 - x1)) + y2 * ((x - x1) / (x2 - x1));
    }
  }
  return x > args[args.length - 2]! ? args[args.length - 1]! : Number.NaN;
}

function codeOf([x, ...points]: readonly string[]): string {
  let code = `${x} > ${points.at(-2)} ? ${points.at(-1)} : NaN`;
  for (let i = points.length - 2; i >= 2; i -= 2) {
    const [x1, y1, x2, y2] = [points[i - 2], points[i - 1], points[i], points[i + 1]];
    const line = `${y1} * ((${x2} - ${x}) / (${x2} - ${x1})) + ${y2} * ((${x} - ${x1}) / (${x2} - ${x1}))`;
    code = `${x} <= ${x2} ? ${line} : ${code}`;
  }
  return `${x} <= ${points[0]} ? ${points[1]} : ${code}`;
}

function slopesAt(args: readonly number[]): number[] {
  const slopes = args.map(() => 0);
  const x = args[0]!;
  if (x <= args[1]!) slopes[2] = 1;
  else if (x > args[args.length - 2]!) slopes[args.length - 1] = 1;
  else {
    let i = 3;
    while (x > args[i]!) i += 2;
    const part = (x - args[i - 2]!) / (args[i]! - args[i - 2]!);
    slopes[0] = (args[i + 1]! - args[i - 1]!) / (args[i]! - args[i - 2]!);
    slopes[i - 1] = 1 - part;
    slopes[i + 1] = part;
  }
  return slopes;
}

/** What `value` may be off by its own rounding, as a share of the larger y. */
const ROUNDING = 8 * Number.EPSILON;

/**
 * Range over one segment where the range of x meets it. The line rises with either y, so their lower ends give its lower
 * end; between two fixed y it is monotone in x.
 */
function segmentRange(x: Interval, args: readonly Interval[], i: number): Interval {
  const part = partOf(x, args[i - 2]!, args[i]!);
  const [y1, y2] = [args[i - 1]!, args[i + 1]!];
  const lo = lineRange(y1.lo, y2.lo, part).lo;
  const hi = lineRange(y1.hi, y2.hi, part).hi;
  return range(lo, hi, y1.certain && y2.certain);
}

function lineRange(y1: number, y2: number, part: Interval): Interval {
  const [lo, hi] = [Math.min(y1, y2), Math.max(y1, y2)];
  if (!Number.isFinite(hi - lo)) return range(lo, hi);
  const line = addRanges(point(y1), multiplyRanges(subtractRanges(point(y2), point(y1)), part));
  const slack = ROUNDING * Math.max(-lo, hi);
  return range(Math.max(line.lo, lo) - slack, Math.min(line.hi, hi) + slack);
}

/** How far along the segment x may stand, within 0 … 1. */
function partOf(x: Interval, x1: Interval, x2: Interval): Interval {
  return clampRange(divideRanges(subtractRanges(x, x1), subtractRanges(x2, x1)), 0, 1);
}

const touches = (x: Interval, x1: Interval, x2: Interval): boolean => x.hi >= x1.lo && x.lo <= x2.hi;

function rangeOf(args: readonly Interval[]): Interval {
  const x = args[0]!;
  const last = args.length - 2;
  const inside = x.lo >= args[1]!.lo && x.hi <= args[last]!.hi;
  let all: Interval | undefined;
  const take = (y: Interval): void => {
    all = all ? hull(all, y) : y;
  };
  if (x.lo <= args[1]!.hi) take(args[2]!);
  for (let i = 3; i <= last; i += 2) if (touches(x, args[i - 2]!, args[i]!)) take(segmentRange(x, args, i));
  if (x.hi > args[last]!.lo) take(args[last + 1]!);
  return range(all!.lo, all!.hi, all!.certain && x.certain && inside);
}

function slopeRanges(args: readonly Interval[]): Interval[] {
  const x = args[0]!;
  const last = args.length - 2;
  const outside = x.lo <= args[1]!.hi || x.hi >= args[last]!.lo;
  const slopes: Interval[] = args.map(() => ZERO);
  let steep: Interval | undefined = outside ? ZERO : undefined;
  for (let i = 3; i <= last; i += 2) {
    if (!touches(x, args[i - 2]!, args[i]!)) continue;
    const slope = divideRanges(subtractRanges(args[i + 1]!, args[i - 1]!), subtractRanges(args[i]!, args[i - 2]!));
    steep = steep ? hull(steep, slope) : slope;
  }
  slopes[0] = steep!;
  for (let i = 1; i <= last; i += 2) slopes[i + 1] = weightOf(x, args, i, last);
  return slopes;
}

/** How much the y of point `i` counts over the range of x: a tent that is 1 at its own x and 0 at its neighbours'. */
function weightOf(x: Interval, args: readonly Interval[], i: number, last: number): Interval {
  const at = args[i]!.lo;
  const weight = (from: number): Interval => {
    const next = from < at ? i - 2 : i + 2;
    if (from === at || next < 1 || next > last) return point(1);
    return clampRange(subtractRanges(point(1), partOf(point(from), args[i]!, args[next]!)), 0, 1);
  };
  const ends = hull(weight(x.lo), weight(x.hi));
  return x.lo <= at && x.hi >= at ? range(ends.lo, 1) : ends;
}
