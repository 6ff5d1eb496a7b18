import type { Curve } from '../packet/plot.ts';
import { titleAtRightEnd } from './histogram.ts';
import { bar, type Layer, label, labelInRow, once, wallAlong } from './layer.ts';
import { textWidth } from './text-width.ts';
import { colours } from './theme.ts';
import { ticks, widened } from './ticks.ts';

const caseHeight = 24;

/** Pixels to one unit of each axis. */
interface Scale {
  readonly x: number;
  readonly y: number;
}

/**
 * Vega-Lite specification of one result over one condition, `width` pixels wide and `height` high: the typical line dashed, the
 * worst-case band with both its edges, limits as hatched walls, the target, and the named cases as bars over the axis.
 * The quantity's name stands above the plot, in the page's own words.
 */
export function curve(plot: Curve, width: number, height: number): object {
  const [low, high] = range(plot);
  const [from, to] = [plot.points[0]!.x, plot.points.at(-1)!.x];
  const yTicks = ticks(low, high, height / 36);
  const left = Math.max(...yTicks.map((tick) => textWidth(String(tick), 10))) + 12;
  const inner = width - left - 8;
  // A scale that begins not far from nought begins there.
  const start = from > 0 && from < to / 3 ? 0 : from;
  const end = to + (to - from) * 0.05;
  const scale: Scale = { x: inner / (end - start), y: height / (high - low) };
  return {
    width: inner,
    height,
    autosize: 'none',
    data: once,
    padding: { left, right: 8, top: 14, bottom: 34 + (plot.cases.length > 0 ? caseHeight : 0) },
    encoding: {
      x: {
        type: 'quantitative',
        scale: { domain: [start, end], nice: false, zero: false },
        axis: {
          ...titleAtRightEnd(plot.xTitle),
          values: ticks(start, to, inner / 52),
          offset: plot.cases.length > 0 ? caseHeight : 4,
        },
      },
      y: {
        type: 'quantitative',
        scale: { domain: [low, high], nice: false, zero: false },
        axis: { title: null, values: yTicks },
      },
    },
    layer: [
      ...band(plot),
      ...bandName(plot, scale.y),
      ...plot.limits.flatMap((limit) => [
        ...wallAlong(limit.at, limit.forbidden, 0, inner),
        limitLabel(limit.label, limit.at, limit.forbidden, from),
      ]),
      ...target(plot, inner),
      ...plot.ends.flatMap(({ x, y, label: text }) => [
        { mark: { type: 'point', size: 16, fill: colours.copper, opacity: 1, strokeWidth: 0 }, encoding: at(x, y) },
        endLabel(text, { x, y }, plot, scale),
      ]),
      ...plot.cases.flatMap((name) => [
        bar(name.from, name.to, height + 15, { strokeWidth: 3 }),
        labelInRow(name.label, (name.from + name.to) / 2, height + 6, { align: 'center' }),
      ]),
    ],
  };
}

const at = (x: number, y: number) => ({
  x: { datum: x, type: 'quantitative' },
  y: { datum: y, type: 'quantitative' },
});

function range(plot: Curve): [low: number, high: number] {
  const limits = [...plot.limits.map((limit) => limit.at), ...(plot.target ? [plot.target.at] : [])];
  const values = [...plot.points.flatMap(({ low, typical, high }) => [low, typical, high]), ...limits];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  if (low === high) return widened(low - Math.abs(low || 1) / 2, high + Math.abs(high || 1) / 2, 6);
  return widened(low, high, 6);
}

function band(plot: Curve): Layer[] {
  const line = (field: string, style: Layer): Layer => ({
    mark: { type: 'line', ...style },
    encoding: { x: { field: 'x' }, y: { field } },
  });
  return [
    {
      data: { values: plot.points },
      layer: [
        {
          mark: { type: 'area', fill: colours.copperTint },
          encoding: { x: { field: 'x' }, y: { field: 'low' }, y2: { field: 'high' } },
        },
        line('low', { stroke: colours.copper, strokeWidth: 1.4 }),
        line('high', { stroke: colours.copper, strokeWidth: 1.4 }),
        line('typical', { stroke: colours.ink, strokeWidth: 1.4, strokeDash: [5, 2.5] }),
      ],
    },
    typicalName(plot),
  ];
}

function typicalName(plot: Curve): Layer {
  const middle = plot.points[Math.floor((plot.points.length - 1) * 0.4)]!;
  return label(plot.typicalLabel, { x: middle.x, y: middle.typical }, { dy: 11, align: 'center' });
}

/** Written into the band near its left end, where it is thick enough to hold a line. */
function bandName(plot: Curve, pixelsPerUnit: number): Layer[] {
  const place = plot.points[Math.floor((plot.points.length - 1) * 0.06)]!;
  const other = [place.low, place.high].find((edge) => Math.abs(edge - place.typical) * pixelsPerUnit >= 18);
  if (other === undefined) return [];
  const style = { align: 'left', fill: colours.copper };
  return [label('worst-case band', { x: place.x, y: (other + place.typical) / 2 }, style)];
}

function limitLabel(text: string, limit: number, forbidden: 'above' | 'below', x: number): Layer {
  return label(text, { x, y: limit }, { align: 'left', dy: forbidden === 'above' ? -11 : 12 });
}

function target(plot: Curve, inner: number): Layer[] {
  if (!plot.target) return [];
  const { at: value, label: text } = plot.target;
  const line = { mark: { type: 'rule', strokeWidth: 0.7, strokeDash: [2, 2.5] } };
  return [
    { ...line, encoding: { y: { datum: value, type: 'quantitative' }, x: { value: 0 }, x2: { value: inner } } },
    label(text, { x: plot.points[0]!.x, y: value }, { align: 'left', dy: 8 }),
  ];
}

/** Above its dot; where a limit or the target would cross the words, inside the band, as far below its edge as the edge falls. */
function endLabel(text: string, place: { x: number; y: number }, plot: Curve, scale: Scale): Layer {
  const [first, last] = [plot.points[0]!.x, plot.points.at(-1)!.x];
  const align = place.x > (first + last) / 2 ? 'right' : 'left';
  const crossing = [...plot.limits, ...(plot.target ? [plot.target] : [])].some(({ at: line }) => {
    const above = (line - place.y) * scale.y;
    return above > 3 && above < 16;
  });
  const dy = crossing ? 12 + fall(plot, place, textWidth(text, 10, 600) + 6, scale) : -9;
  return label(text, place, { align, dx: align === 'right' ? -6 : 6, dy, fill: colours.copper, fontWeight: 600 });
}

/** Pixels by which the upper edge of the band falls within `pixels` of a place. */
function fall(plot: Curve, place: { x: number; y: number }, pixels: number, scale: Scale): number {
  const near = plot.points.filter(({ x }) => Math.abs(x - place.x) * scale.x <= pixels);
  return Math.max(0, ...near.map(({ high }) => (place.y - high) * scale.y));
}
