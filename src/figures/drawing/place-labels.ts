import type { Box } from '../../spec/drawing/drawing.ts';
import { overlap } from '../../spec/drawing/frame.ts';
import type { Candidate } from './candidates.ts';

/** A label with the places it may take. */
export interface Wanted {
  readonly candidates: readonly Candidate[];
}

/** Pixels between two labels, so that neither reads as part of the other. */
const air = 4;

const aired = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by / 2,
  right: right + by,
  bottom: bottom + by / 2,
});

/** Partial answers looked at before the best so far is taken. */
const patience = 40_000;

/**
 * One place for each label, so that none stands on another and the sum of their costs is small: a search from the label with
 * the fewest places, which gives up a branch as soon as it costs more than the best answer. Where no answer exists, each takes
 * the place that covers least.
 * @returns a candidate for each label, and how many could not keep clear
 */
export function placeLabels(
  wanted: readonly Wanted[],
  obstacles: readonly Box[],
  frame: Box,
): { places: Candidate[]; crowded: number } {
  const free = wanted.map(({ candidates }) =>
    candidates
      .filter(({ box }) => !obstacles.some((obstacle) => overlap(aired(box, 1), obstacle)))
      .map((candidate) => ({ ...candidate, cost: candidate.cost + outside(candidate.box, frame) * 0.04 }))
      .toSorted((a, b) => a.cost - b.cost)
      .slice(0, 40),
  );
  const order = free.map((_, i) => i).toSorted((a, b) => free[a]!.length - free[b]!.length);
  const best = search(order, free);
  if (best) return { places: best, crowded: 0 };
  return leastCovering(wanted, obstacles);
}

const outside = (box: Box, frame: Box): number =>
  Math.max(0, frame.left - box.left) +
  Math.max(0, box.right - frame.right) +
  Math.max(0, frame.top - box.top) +
  Math.max(0, box.bottom - frame.bottom);

function search(order: readonly number[], free: readonly (readonly Candidate[])[]): Candidate[] | undefined {
  const least = order.map((index) => free[index]![0]?.cost ?? 0);
  // What the labels still to come cost at least.
  const rest = least.map((_, depth) => least.slice(depth).reduce((sum, cost) => sum + cost, 0));
  const taken: Candidate[] = [];
  let best: Candidate[] | undefined;
  let bestCost = Infinity;
  let steps = 0;
  const descend = (depth: number, cost: number): void => {
    if (depth === order.length) {
      best = order.map((_, i) => taken[order.indexOf(i)]!);
      bestCost = cost;
      return;
    }
    for (const candidate of free[order[depth]!]!) {
      if (++steps > patience) return;
      if (cost + candidate.cost + (rest[depth + 1] ?? 0) >= bestCost) return;
      if (taken.slice(0, depth).some(({ box }) => overlap(aired(box, air), candidate.box))) continue;
      taken[depth] = candidate;
      descend(depth + 1, cost + candidate.cost);
    }
  };
  descend(0, 0);
  return best;
}

function leastCovering(wanted: readonly Wanted[], obstacles: readonly Box[]): { places: Candidate[]; crowded: number } {
  const places: Candidate[] = [];
  let crowded = 0;
  for (const { candidates } of wanted) {
    const covered = (box: Box) =>
      [...obstacles, ...places.map((one) => one.box)].reduce((sum, other) => sum + shared(box, other), 0);
    const [first] = candidates
      .map((candidate) => ({ candidate, covers: covered(candidate.box) }))
      .toSorted((a, b) => a.covers - b.covers || a.candidate.cost - b.candidate.cost);
    if (first!.covers > 0) crowded++;
    places.push(first!.candidate);
  }
  return { places, crowded };
}

function shared(a: Box, b: Box): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return width > 0 && height > 0 ? width * height : 0;
}
