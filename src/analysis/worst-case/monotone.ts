import type { Interval } from '../../expression/interval.ts';
import { range } from '../../expression/ranges.ts';
import type { Box } from './box.ts';
import type { BoardFunction } from './function.ts';

/** The least and greatest value of a function over several boxes, where each is reached. SI base units. */
export interface Ends {
  readonly min: { readonly value: number; readonly at: Float64Array };
  readonly max: { readonly value: number; readonly at: Float64Array };
}

/**
 * The ends of a function that rises or falls in each variable all over each box: then two corners are the extremes, and
 * nothing needs to be searched.
 * @returns undefined where a slope may change its sign, or the function may have no value somewhere
 */
export function monotoneEnds(f: BoardFunction, boxes: readonly Box[]): Ends | undefined {
  let ends: Ends | undefined;
  for (const box of boxes) {
    const part = f.variables.map((v): Interval => range(box.lo[v]!, box.hi[v]!));
    const { range: values, slopes } = f.rangeAndSlopes(part);
    if (!values.certain || !part.every((x, i) => x.lo === x.hi || oneSigned(slopes[i]!))) return undefined;
    const corner = (up: boolean) => Float64Array.from(part, (x, i) => (slopes[i]!.lo >= 0 === up ? x.hi : x.lo));
    const [low, high] = [corner(false), corner(true)].map((at) => ({ at, value: f.value(at) }));
    if (!Number.isFinite(low!.value) || !Number.isFinite(high!.value)) return undefined;
    ends = {
      min: ends && ends.min.value <= low!.value ? ends.min : low!,
      max: ends && ends.max.value >= high!.value ? ends.max : high!,
    };
  }
  return ends;
}

const oneSigned = ({ lo, hi, certain }: Interval): boolean => certain && (lo >= 0 || hi <= 0);
