import type { Plot } from '../packet/plot.ts';
import { bounds } from './bounds.ts';
import { curve } from './curve.ts';
import { draw } from './draw.ts';
import { histogram } from './histogram.ts';

/**
 * SVG of a plot, `width` pixels wide at the size of its lettering on paper; `height` of the drawn area for the kinds whose
 * height is ours to choose. `id` must be unique in the page.
 */
export function plotSvg(plot: Plot, width: number, height: number, id: string, says: string): Promise<string> {
  switch (plot.kind) {
    case 'histogram':
      return draw(histogram(plot, width, height), id, says);
    case 'curve':
      return draw(curve(plot, width, height), id, says);
    case 'bounds':
      return draw(bounds(plot, width, height), id, says);
    case 'vega-lite':
      return draw({ width: width - 60, height, ...plot.spec }, id, says);
    default:
      return plot satisfies never;
  }
}
