import type { Interval } from '../../expression/interval.ts';
import { addRanges, multiplyRanges, negateRange, point, range, subtractRanges } from '../../expression/ranges.ts';
import { flip, type Point } from './corner.ts';
import type { BoardFunction } from './function.ts';
import { Heap } from './heap.ts';

export interface Proof {
  /** The greatest value that was reached, and the box it lies in. */
  readonly best: Point;
  readonly from: number;
  /** No value is greater. */
  readonly bound: number;
}

interface Node {
  readonly box: readonly Interval[];
  /** Which of the boxes it was cut from. */
  readonly from: number;
  readonly bound: number;
  /** The variable along which to cut next. */
  readonly widest: number;
}

export interface ProofOptions {
  /** How far bound and value may stay apart. */
  readonly tolerance: number;
  /** Parts that may be looked at, all boxes together. */
  readonly budget: number;
  /** A value to be passed: no more is asked than whether one is greater, and the search ends with the first. */
  readonly enough?: number;
}

/**
 * The greatest value of `sense`·f over several boxes, with a proof. A part of a box is bounded by its interval enclosure
 * and by the mean value form, whichever is tighter; variables whose slope keeps its sign are pinned to their end; what
 * cannot beat the best value reached in any box is dropped, the rest is cut in two, until bound and best agree.
 * Source: R. E. Moore, R. B. Kearfott, M. J. Cloud, Introduction to Interval Analysis (SIAM, 2009), ch. 6; from memory.
 * @param start  a point of each box, for a value to beat
 */
export function prove(
  f: BoardFunction,
  boxes: readonly (readonly Interval[])[],
  sense: 1 | -1,
  start: readonly Point[],
  { tolerance, budget, enough = Number.NEGATIVE_INFINITY }: ProofOptions,
): Proof {
  let from = start.reduce((a, { value }, i) => (value > start[a]!.value ? i : a), 0);
  let best = start[from]!;
  let looked = 0;
  let dropped = Number.NEGATIVE_INFINITY;
  const open = new Heap<Node>((a, b) => b.bound - a.bound);
  const look = (part: readonly Interval[], of: number): void => {
    looked++;
    const { reached, bound, box, widest } = examine(f, part, sense);
    for (const candidate of reached) if (candidate.value > best.value) [best, from] = [candidate, of];
    if (bound <= Math.max(best.value + tolerance, enough)) dropped = Math.max(dropped, bound);
    else open.push({ box, from: of, bound, widest });
  };
  boxes.forEach(look);
  if (open.size > 0) {
    const box = boxes[from]!;
    best = flip(
      f,
      Float64Array.from(box, ({ lo }) => lo),
      Float64Array.from(box, ({ hi }) => hi),
      best,
      sense,
    );
  }
  const decided = (): boolean => enough !== Number.NEGATIVE_INFINITY && best.value > enough;
  while (open.size > 0 && open.peek()!.bound > best.value + tolerance && looked < budget && !decided()) {
    const node = open.pop()!;
    // Where nothing is left to cut, rounding alone keeps bound and value apart.
    if (node.widest < 0) dropped = Math.max(dropped, node.bound);
    else for (const half of halves(node)) look(half, node.from);
  }
  return { best, from, bound: Math.max(best.value, dropped, open.peek()?.bound ?? Number.NEGATIVE_INFINITY) };
}

interface Examined {
  /** The part with what is settled pinned to its end. */
  readonly box: readonly Interval[];
  readonly bound: number;
  readonly widest: number;
  readonly reached: readonly Point[];
}

/** Bounds one part of the box and tries the points that its slopes suggest. */
function examine(f: BoardFunction, part: readonly Interval[], sense: 1 | -1): Examined {
  let box = part;
  let { range: values, slopes } = orient(f.rangeAndSlopes(box), sense);
  const pinned = pin(box, slopes);
  if (pinned) {
    box = pinned;
    ({ range: values, slopes } = orient(f.rangeAndSlopes(box), sense));
  }
  const middle = Float64Array.from(box, ({ lo, hi }) => lo + (hi - lo) / 2);
  const corner = Float64Array.from(box, ({ lo, hi }, i) => (slopes[i]!.lo + slopes[i]!.hi >= 0 ? hi : lo));
  const reached = [middle, corner]
    .map((at): Point => ({ at, value: sense * f.value(at) }))
    .filter(({ value }) => !Number.isNaN(value));
  const mean = meanValueBound(f, box, slopes, middle, sense);
  return { box, bound: Math.min(values.hi, mean), widest: widest(box, slopes), reached };
}

function orient(
  { range: values, slopes }: { range: Interval; slopes: Interval[] },
  sense: 1 | -1,
): { range: Interval; slopes: Interval[] } {
  return sense === 1 ? { range: values, slopes } : { range: negateRange(values), slopes: slopes.map(negateRange) };
}

/** The box with every variable of one-signed slope moved to the end where the value is greatest; undefined if none is. */
function pin(box: readonly Interval[], slopes: readonly Interval[]): Interval[] | undefined {
  let any = false;
  const pinned = box.map((x, i) => {
    const slope = slopes[i]!;
    if (x.lo === x.hi || !slope.certain || (slope.lo < 0 && slope.hi > 0)) return x;
    any = true;
    return point(slope.lo >= 0 ? x.hi : x.lo);
  });
  return any ? pinned : undefined;
}

/** f(c) + Σ slope·(x − c) at its greatest, which is quadratically tight in the width of the box. */
function meanValueBound(
  f: BoardFunction,
  box: readonly Interval[],
  slopes: readonly Interval[],
  middle: Float64Array,
  sense: 1 | -1,
): number {
  if (slopes.some(({ certain }) => !certain)) return Number.POSITIVE_INFINITY;
  const centre = f.range(Array.from(middle, point));
  let sum = sense === 1 ? centre : negateRange(centre);
  if (!sum.certain) return Number.POSITIVE_INFINITY;
  for (const [i, x] of box.entries()) {
    if (x.lo === x.hi) continue;
    sum = addRanges(sum, multiplyRanges(slopes[i]!, subtractRanges(x, point(middle[i]!))));
  }
  return sum.hi;
}

/** Where cutting helps most: the slope's size times the width; an unbounded slope first. −1 when no variable has width. */
function widest(box: readonly Interval[], slopes: readonly Interval[]): number {
  let found = -1;
  let most = -1;
  for (const [i, { lo, hi }] of box.entries()) {
    const middle = lo + (hi - lo) / 2;
    if (!(lo < middle && middle < hi)) continue;
    const { lo: least, hi: greatest } = slopes[i]!;
    const swing = Math.max(Math.abs(least), Math.abs(greatest)) * (hi - lo);
    if (swing > most) [found, most] = [i, swing];
  }
  return found;
}

function halves({ box, widest: at }: Node): [Interval[], Interval[]] {
  const { lo, hi } = box[at]!;
  const middle = lo + (hi - lo) / 2;
  return [box.with(at, range(lo, middle)), box.with(at, range(middle, hi))];
}
