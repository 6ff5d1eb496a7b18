import type { Figure } from '../packet/block.ts';

export interface PlotSize {
  /** Pixels at the size of the lettering on paper. */
  readonly width: number;
  /** Of the drawn area, without axis and labels. */
  readonly height: number;
}

/** Widths of the text block's parts: 118, 172 and 83 mm. */
const fullWidth: Record<Figure['width'], number> = { column: 446, wide: 650, half: 314 };

/** Every plot is drawn twice, for paper and wide screens and for narrow ones, each with lettering of its own size. */
export function plotSizes({ plot, width }: Figure): { full: PlotSize; narrow: PlotSize } {
  // One that has the width of the text to itself needs less height to be read.
  const share = plot.kind === 'histogram' ? 0.29 : plot.kind === 'curve' && width === 'column' ? 0.38 : 0.48;
  const size = (pixels: number): PlotSize => ({ width: pixels, height: Math.round(Math.min(pixels, 446) * share) });
  return { full: size(fullWidth[width]), narrow: size(330) };
}
