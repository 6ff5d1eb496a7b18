import type { Box } from '../worst-case/box.ts';

/** A stretch of the axis over which the same boxes apply. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly boxes: readonly Box[];
}

/**
 * The axis cut where an operating case begins or ends. What no case asks for is left out, so that a curve has a gap there.
 * @param held  whether a case may hold the variable; a part that is tried beyond its own range stands in every case
 */
export function stretchesOf(
  boxes: readonly Box[],
  variable: number,
  { from, to }: { readonly from: number; readonly to: number },
  held: boolean,
): Stretch[] {
  if (!held) return [{ from, to, boxes }];
  const ends = boxes.flatMap(({ lo, hi }) => [lo[variable]!, hi[variable]!]);
  const cuts = [...new Set([from, ...ends, to])].filter((x) => x >= from && x <= to).sort((a, b) => a - b);
  return joined(
    cuts.slice(1).flatMap((end, i): Stretch[] => {
      const start = cuts[i]!;
      const inside = boxes.filter(({ lo, hi }) => lo[variable]! <= start && hi[variable]! >= end);
      return inside.length ? [{ from: start, to: end, boxes: inside }] : [];
    }),
  );
}

/** Neighbours in which the same boxes apply are one stretch. */
function joined(stretches: readonly Stretch[]): Stretch[] {
  const found: Stretch[] = [];
  for (const next of stretches) {
    const last = found.at(-1);
    const same =
      last?.to === next.from &&
      last.boxes.length === next.boxes.length &&
      next.boxes.every((box) => last.boxes.includes(box));
    if (same) found[found.length - 1] = { ...last, to: next.to };
    else found.push(next);
  }
  return found;
}
