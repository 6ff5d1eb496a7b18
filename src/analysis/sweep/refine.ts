/** A point of a curve: where it stands, and the heights of its lines. */
export interface Drawn {
  readonly x: number;
  readonly lines: readonly number[];
}

/**
 * Points along a curve, closer together where it bends: starts from those given and halves the step beside the point that
 * lies farthest from the straight line between its neighbours, until none is off by more than `blur` of the height, or
 * there are `most` points.
 * @param at  a point of the curve; `undefined` where it has none
 * @param middle  half-way between two places: their mean, or their geometric mean on an axis of decades
 */
export function refined<T extends Drawn>(
  start: readonly number[],
  at: (x: number) => T | undefined,
  middle: (a: number, b: number) => number,
  { blur, most }: { readonly blur: number; readonly most: number },
): T[] {
  let points = start.flatMap((x) => at(x) ?? []);
  while (points.length >= 3 && points.length < most) {
    const worst = mostBent(points);
    if (!worst || worst.off <= blur * height(points)) break;
    const { index } = worst;
    const [left, here, right] = [points[index - 1]!, points[index]!, points[index + 1]!];
    const fresh = [middle(left.x, here.x), middle(here.x, right.x)].flatMap((x) => at(x) ?? []);
    const known = new Set(points.map(({ x }) => x));
    const added = fresh.filter(({ x }) => !known.has(x));
    if (!added.length) break;
    points = [...points, ...added].sort((a, b) => a.x - b.x);
  }
  return points;
}

const height = (points: readonly Drawn[]): number => {
  const values = points.flatMap(({ lines }) => lines);
  return Math.max(...values) - Math.min(...values);
};

/** The point that lies farthest from the line between its neighbours. */
function mostBent(points: readonly Drawn[]): { index: number; off: number } | undefined {
  let worst: { index: number; off: number } | undefined;
  for (let index = 1; index < points.length - 1; index++) {
    const [left, here, right] = [points[index - 1]!, points[index]!, points[index + 1]!];
    const share = (here.x - left.x) / (right.x - left.x);
    const off = Math.max(
      ...here.lines.map((y, i) => Math.abs(y - (left.lines[i]! + (right.lines[i]! - left.lines[i]!) * share))),
    );
    if (!worst || off > worst.off) worst = { index, off };
  }
  return worst;
}
