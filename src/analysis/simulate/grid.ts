/** Bins of the grid that values are counted into. */
export const bins = 1024;
/** Bins that the range of the first boards takes; the rest stand on either side, for values that lie further out. */
const filled = 614;

/** How values are counted: bin = round((x − shift)·scale + offset), held within 0 … bins − 1. */
export interface Grid {
  readonly shift: number;
  readonly scale: number;
  readonly offset: number;
}

/**
 * The grid for an output by the first boards.
 * @param mean  about where the values lie, so that sums of x − shift lose no digit
 * @returns undefined where the values do not spread over an ordinary range
 */
export function gridOver(min: number, max: number, mean: number): Grid | undefined {
  const scale = filled / (max - min);
  const offset = (mean - min) * scale + (bins - filled) / 2;
  return scale > 0 && Number.isFinite(scale) && Number.isFinite(offset) ? { shift: mean, scale, offset } : undefined;
}

/** The bin of a value. */
export const binOf = (grid: Grid, x: number): number => Math.min(bins - 1, Math.max(0, farBin(grid, x)));

/** 1.5·2⁵²: what is added to it is rounded to a whole number, halves to even. */
const rounder = 6755399441055744;

/** The bin of a value, if there were bins without end. */
export function farBin({ shift, scale, offset }: Grid, x: number): number {
  const at = (x - shift) * scale + offset;
  return Math.abs(at) < 2 ** 51 ? at + rounder - rounder : at;
}

/** The value at the lower edge of a bin. */
export const edgeOf = ({ shift, scale, offset }: Grid, bin: number): number => shift + (bin - 0.5 - offset) / scale;
