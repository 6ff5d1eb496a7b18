import type { Curve } from '../packet/plot.ts';
import { type CurveFrame, curveFrame } from './curve-frame.ts';
import { curveLabels } from './curve-labels.ts';
import { titleAtRightEnd } from './histogram.ts';
import { bar, hatched, type Layer, labelInRow, once, stem, wallAlong } from './layer.ts';
import { colours } from './theme.ts';

const caseHeight = 24;

/**
 * Vega-Lite specification of one result over one condition, `width` pixels wide and `height` high: the typical line dashed, the
 * worst-case band with both its edges, limits as hatched walls, the target, and the named cases as bars over the axis.
 * The quantity's name stands above the plot, in the page's own words.
 */
export function curve(plot: Curve, width: number, height: number): object {
  const frame = curveFrame(plot, width, height);
  const below = plot.cases.length > 0 || plot.chosen ? caseHeight : 0;
  return {
    width: frame.inner,
    height,
    autosize: 'none',
    data: once,
    padding: { left: frame.left, right: 8, top: 14, bottom: 34 + below },
    encoding: {
      x: {
        type: 'quantitative',
        scale: scale(frame.x, plot.decades?.x),
        axis: { ...titleAtRightEnd(plot.xTitle), values: frame.xTicks, offset: below || 4 },
      },
      y: {
        type: 'quantitative',
        scale: scale(frame.y, plot.decades?.y),
        axis: { title: null, values: frame.yTicks },
      },
    },
    layer: [
      ...band(plot),
      ...plot.limits.flatMap((limit) => wallAlong(limit.at, limit.forbidden, 0, frame.inner)),
      ...limitLine(plot, frame),
      ...target(plot, frame.inner),
      ...plot.ends.map(({ x, y }) => ({
        mark: { type: 'point', size: 16, fill: colours.copper, opacity: 1, strokeWidth: 0 },
        encoding: at(x, y),
      })),
      ...plot.cases.flatMap((name) => [
        bar(name.from, name.to, height + 15, { strokeWidth: 3 }),
        labelInRow(name.label, (name.from + name.to) / 2, height + 6, { align: 'center' }),
      ]),
      ...chosen(plot, height, frame),
      ...curveLabels(plot, frame),
    ],
  };
}

const scale = (domain: readonly [number, number], decades = false) => ({
  domain,
  nice: false,
  ...(decades ? { type: 'log' } : { zero: false }),
});

const at = (x: number, y: number) => ({
  x: { datum: x, type: 'quantitative' },
  y: { datum: y, type: 'quantitative' },
});

function band(plot: Curve): Layer[] {
  const detail = { detail: { field: 'run' } };
  const line = (field: string, style: Layer): Layer => ({
    mark: { type: 'line', ...style },
    encoding: { x: { field: 'x' }, y: { field }, ...detail },
  });
  return [
    {
      data: { values: plot.points.map((point) => ({ run: 0, ...point })) },
      layer: [
        {
          mark: { type: 'area', fill: colours.copperTint },
          encoding: { x: { field: 'x' }, y: { field: 'low' }, y2: { field: 'high' }, ...detail },
        },
        line('low', { stroke: colours.copper, strokeWidth: 1.4 }),
        line('high', { stroke: colours.copper, strokeWidth: 1.4 }),
        line('typical', { stroke: colours.ink, strokeWidth: 1.4, strokeDash: [5, 2.5] }),
        ...(plot.limitLine ? [line('limit', { stroke: colours.ink, strokeWidth: 1.7 })] : []),
      ],
    },
  ];
}

/** The limit goes with the points: its line is part of the band's layers, here comes its hatching. */
function limitLine(plot: Curve, frame: CurveFrame): Layer[] {
  if (!plot.limitLine) return [];
  const places = plot.points.flatMap(({ x, limit }) => (limit === undefined ? [] : [{ x, y: limit }]));
  return places.length > 1 ? [hatched(places, plot.limitLine.forbidden, frame)] : [];
}

function target(plot: Curve, inner: number): Layer[] {
  if (!plot.target) return [];
  const { at: value } = plot.target;
  const line = { mark: { type: 'rule', strokeWidth: 0.7, strokeDash: [2, 2.5] } };
  return [{ ...line, encoding: { y: { datum: value, type: 'quantitative' }, x: { value: 0 }, x2: { value: inner } } }];
}

function chosen(plot: Curve, height: number, frame: CurveFrame): Layer[] {
  if (!plot.chosen) return [];
  const { x, label: text } = plot.chosen;
  const share = frame.columnOf(x) / frame.inner;
  const align = share < 0.2 ? 'left' : share > 0.8 ? 'right' : 'center';
  return [
    stem(x, 0, height + 6, { strokeWidth: 0.7, strokeDash: [1, 2] }),
    labelInRow(text, x, height + 13, { align }),
  ];
}
