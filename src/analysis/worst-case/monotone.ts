import { type Box, within } from './box.ts';
import type { BoardFunction } from './function.ts';

/** The least and greatest value of a function over several boxes, and where each is reached. SI base units. */
export interface Extremes {
  readonly min: { readonly value: number; readonly at: Float64Array };
  readonly max: { readonly value: number; readonly at: Float64Array };
}

/**
 * The ends of a function that rises or falls in each variable all over each box: then two corners are the extremes, and
 * nothing needs to be searched.
 * @returns undefined where a slope may change its sign, or the function may have no value somewhere
 */
export function monotoneEnds(f: BoardFunction, boxes: readonly Box[]): Extremes | undefined {
  let ends: Extremes | undefined;
  for (const box of boxes) {
    const part = within(box, f.variables);
    const { range: values, slopes } = f.rangeAndSlopes(part);
    if (!values.certain) return undefined;
    for (let i = 0; i < part.lo.length; i++) {
      const oneSigned = slopes.certain[i] === 1 && (slopes.lo[i]! >= 0 || slopes.hi[i]! <= 0);
      if (part.lo[i] !== part.hi[i] && !oneSigned) return undefined;
    }
    const rises = Array.from(part.lo, (_, i) => slopes.lo[i]! >= 0);
    const [low, high] = [false, true]
      .map((up) => part.lo.map((lo, i) => (rises[i] === up ? part.hi[i]! : lo)))
      .map((at) => ({ at, value: f.value(at) }));
    if (!Number.isFinite(low!.value) || !Number.isFinite(high!.value)) return undefined;
    ends = {
      min: ends && ends.min.value <= low!.value ? ends.min : low!,
      max: ends && ends.max.value >= high!.value ? ends.max : high!,
    };
  }
  return ends;
}
