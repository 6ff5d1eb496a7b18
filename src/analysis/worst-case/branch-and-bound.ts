import type { RangeList } from '../../expression/range-list.ts';
import { productHigh, productLow } from '../../expression/ranges.ts';
import { addDown, addUp } from '../../expression/rounding.ts';
import { flip, type Point } from './corner.ts';
import type { BoardFunction, Ends } from './function.ts';
import { Heap } from './heap.ts';

export interface Proof {
  /** The greatest value that was reached, and the box it lies in. */
  readonly best: Point;
  readonly from: number;
  /** No value is greater. */
  readonly bound: number;
}

interface Node {
  readonly box: Ends;
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
  boxes: readonly Ends[],
  sense: 1 | -1,
  start: readonly Point[],
  { tolerance, budget, enough = Number.NEGATIVE_INFINITY }: ProofOptions,
): Proof {
  let from = start.reduce((a, { value }, i) => (value > start[a]!.value ? i : a), 0);
  let best = start[from]!;
  let looked = 0;
  let dropped = Number.NEGATIVE_INFINITY;
  const open = new Heap<Node>((a, b) => b.bound - a.bound);
  const look = (part: Ends, of: number): void => {
    looked++;
    const { reached, bound, box, widest } = examine(f, part, sense);
    for (const candidate of reached) if (candidate.value > best.value) [best, from] = [candidate, of];
    if (bound <= Math.max(best.value + tolerance, enough)) dropped = Math.max(dropped, bound);
    else open.push({ box, from: of, bound, widest });
  };
  boxes.forEach(look);
  if (open.size > 0) {
    const box = boxes[from]!;
    best = flip(f, box.lo, box.hi, best, sense);
  }
  const decided = (): boolean => enough !== Number.NEGATIVE_INFINITY && best.value > enough;
  while (open.size > 0 && open.peek()!.bound > best.value + tolerance && looked < budget && !decided()) {
    const node = open.pop()!;
    // Where nothing is left to cut, rounding alone keeps bound and value apart.
    if (node.widest < 0) dropped = Math.max(dropped, node.bound);
    else for (const half of halves(node.box, node.widest)) look(half, node.from);
  }
  return { best, from, bound: Math.max(best.value, dropped, open.peek()?.bound ?? Number.NEGATIVE_INFINITY) };
}

interface Examined {
  /** The part with what is settled pinned to its end. */
  readonly box: Ends;
  readonly bound: number;
  readonly widest: number;
  readonly reached: readonly Point[];
}

/** Bounds one part of the box and tries the points that its slopes suggest. */
function examine(f: BoardFunction, part: Ends, sense: 1 | -1): Examined {
  let box = part;
  let { range: values, slopes } = f.rangeAndSlopes(box);
  const pinned = pin(box, slopes, sense);
  if (pinned) {
    box = pinned;
    ({ range: values, slopes } = f.rangeAndSlopes(box));
  }
  const middle = box.lo.map((lo, i) => lo + (box.hi[i]! - lo) / 2);
  const corner = box.lo.map((lo, i) => (sense * (slopes.lo[i]! + slopes.hi[i]!) >= 0 ? box.hi[i]! : lo));
  const reached = [middle, corner]
    .map((at): Point => ({ at, value: sense * f.value(at) }))
    .filter(({ value }) => !Number.isNaN(value));
  const bound = Math.min(sense === 1 ? values.hi : -values.lo, meanValueBound(f, box, slopes, middle, sense));
  return { box, bound, widest: widest(box, slopes), reached };
}

/** The box with every variable of one-signed slope moved to the end where the value is greatest; undefined if none is. */
function pin({ lo, hi }: Ends, slopes: RangeList, sense: 1 | -1): Ends | undefined {
  let pinned: Ends | undefined;
  for (let i = 0; i < lo.length; i++) {
    const [least, greatest] = [slopes.lo[i]!, slopes.hi[i]!];
    if (lo[i] === hi[i] || !slopes.certain[i] || (least < 0 && greatest > 0)) continue;
    pinned ??= { lo: lo.slice(), hi: hi.slice() };
    if (least >= 0 === (sense === 1)) pinned.lo[i] = hi[i]!;
    else pinned.hi[i] = lo[i]!;
  }
  return pinned;
}

/** f(c) + Σ slope·(x − c) at its greatest, which is quadratically tight in the width of the box. */
function meanValueBound(f: BoardFunction, box: Ends, slopes: RangeList, middle: Float64Array, sense: 1 | -1): number {
  for (let i = 0; i < middle.length; i++) if (!slopes.certain[i]) return Number.POSITIVE_INFINITY;
  const centre = f.range({ lo: middle, hi: middle });
  if (!centre.certain) return Number.POSITIVE_INFINITY;
  let sum = sense === 1 ? centre.hi : -centre.lo;
  for (let i = 0; i < middle.length; i++) {
    const [lo, hi] = [box.lo[i]!, box.hi[i]!];
    if (lo === hi) continue;
    const [below, above] = [addDown(lo, -middle[i]!), addUp(hi, -middle[i]!)];
    const [least, greatest] = [slopes.lo[i]!, slopes.hi[i]!];
    const reach = sense === 1 ? productHigh(least, greatest, below, above) : -productLow(least, greatest, below, above);
    sum = addUp(sum, reach);
  }
  return sum;
}

/** Where cutting helps most: the slope's size times the width; an unbounded slope first. −1 when no variable has width. */
function widest(box: Ends, slopes: RangeList): number {
  let found = -1;
  let most = -1;
  for (let i = 0; i < box.lo.length; i++) {
    const [lo, hi] = [box.lo[i]!, box.hi[i]!];
    const middle = lo + (hi - lo) / 2;
    if (!(lo < middle && middle < hi)) continue;
    const swing = Math.max(Math.abs(slopes.lo[i]!), Math.abs(slopes.hi[i]!)) * (hi - lo);
    if (swing > most) [found, most] = [i, swing];
  }
  return found;
}

/** A box in two, cut in the middle of one variable. */
export function halves({ lo, hi }: Ends, at: number): [Ends, Ends] {
  const middle = lo[at]! + (hi[at]! - lo[at]!) / 2;
  return [
    { lo, hi: hi.with(at, middle) },
    { lo: lo.with(at, middle), hi },
  ];
}
