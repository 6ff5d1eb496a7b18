import type { Bounds, Piece } from '../packet/plot.ts';
import { titleAtRightEnd } from './histogram.ts';
import { type Layer, label, once } from './layer.ts';
import { textWidth } from './text-width.ts';
import { colours } from './theme.ts';
import { ticks } from './ticks.ts';

/** Vega-Lite specification of a curve in ink with the boxes that enclose it: coarse ones in outline, fine ones filled. */
export function bounds(plot: Bounds, width: number, height: number): object {
  const high = Math.max(...plot.coarse.map((piece) => piece.high)) * 1.06;
  const [from, to] = [plot.line[0]!.x, plot.line.at(-1)!.x];
  const yTicks = ticks(0, high, height / 36);
  const left = Math.max(...yTicks.map((tick) => textWidth(String(tick), 10))) + 12;
  const inner = width - left - 8;
  const top = plot.coarse.reduce((one, other) => (other.high > one.high ? other : one));
  const last = plot.coarse.at(-1)!;
  return {
    width: inner,
    height,
    autosize: 'none',
    padding: { left, right: 8, top: 8, bottom: 34 },
    data: once,
    encoding: {
      x: {
        type: 'quantitative',
        scale: { domain: [from, to], nice: false, zero: false },
        axis: { ...titleAtRightEnd(plot.xTitle), values: ticks(from, to, inner / 52), offset: 4 },
      },
      y: {
        type: 'quantitative',
        scale: { domain: [0, high], nice: false },
        axis: { title: null, values: yTicks },
      },
    },
    layer: [
      boxes(plot.coarse, { fill: null, stroke: colours.copper, strokeWidth: 0.8, strokeDash: [3, 2] }),
      boxes(plot.fine, { fill: colours.copperTint, stroke: colours.copper, strokeWidth: 0.5 }),
      {
        data: { values: plot.line },
        mark: { type: 'line', stroke: colours.ink, strokeWidth: 1.4 },
        encoding: { x: { field: 'x' }, y: { field: 'y' } },
      },
      label(plot.labels[0]!, { x: top.to, y: top.high }, { align: 'left', dx: 6, dy: 6, fill: colours.copper }),
      label(plot.labels[1]!, { x: last.to, y: last.low }, { align: 'right', dx: -6, dy: 10, fill: colours.copper }),
      label(plot.worst.label, { x: last.to, y: plot.worst.at }, { align: 'right', dx: -6, dy: -8, fontWeight: 600 }),
      {
        mark: { type: 'rule', strokeWidth: 0.7, strokeDash: [2, 2.5] },
        encoding: { x: { value: 0 }, x2: { value: inner }, y: { datum: plot.worst.at, type: 'quantitative' } },
      },
    ],
  };
}

function boxes(pieces: readonly Piece[], style: Layer): Layer {
  return {
    data: { values: pieces },
    mark: { type: 'rect', ...style },
    encoding: { x: { field: 'from' }, x2: { field: 'to' }, y: { field: 'low' }, y2: { field: 'high' } },
  };
}
