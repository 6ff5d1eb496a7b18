import type { Box, Place } from './drawing.ts';

/** Where a symbol stands: its middle, the way from its first end to its second, and the side that its third lies on. */
export interface Frame {
  readonly middle: Place;
  /** Unit vector from the first end to the second. */
  readonly along: Place;
  /** Unit vector across it, on the side where the symbol reaches out. */
  readonly across: Place;
}

/**
 * Frame of two ends on one line of the grid; `toward` picks the side, else it is the left hand of one who walks from the first
 * to the second: above a symbol that runs to the right, right of one that runs down.
 */
export function frameOf(first: Place, second: Place, toward?: Place): Frame {
  const [dx, dy] = [second[0] - first[0], second[1] - first[1]];
  const length = Math.hypot(dx, dy) || 1;
  const along: Place = [dx / length, dy / length];
  const middle: Place = [(first[0] + second[0]) / 2, (first[1] + second[1]) / 2];
  const left: Place = [along[1], -along[0]];
  const side = toward ? (toward[0] - middle[0]) * left[0] + (toward[1] - middle[1]) * left[1] : 1;
  return { middle, along, across: side < 0 ? [-left[0], -left[1]] : left };
}

/** A point of a symbol's own drawing on the grid: `s` along it, `t` to its side. */
export const at = ({ middle, along, across }: Frame, s: number, t: number): Place => [
  middle[0] + s * along[0] + t * across[0],
  middle[1] + s * along[1] + t * across[1],
];

/** The rectangle from `s1, t1` to `s2, t2` of a symbol's own drawing, on the grid. */
export function boxIn(frame: Frame, s1: number, t1: number, s2: number, t2: number): Box {
  return boxAround([at(frame, s1, t1), at(frame, s2, t2)]);
}

/** The smallest rectangle that holds all places. */
export function boxAround(places: readonly Place[]): Box {
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

/** Whether two rectangles share more than an edge. */
export const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
