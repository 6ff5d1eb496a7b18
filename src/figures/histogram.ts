import type { Histogram } from '../packet/plot.ts';
import { bar, type Layer, labelInRow, once, ring, stem, wallAcross } from './layer.ts';
import { textWidth } from './text-width.ts';
import { colours } from './theme.ts';
import { ticks } from './ticks.ts';

const axisHeight = 30;
const rowHeight = 26;
const gutter = 78;

/**
 * Vega-Lite specification of a histogram `width` pixels wide and `height` high (bars alone): bars of simulated boards, quantiles
 * as stems of three heights, limits as walls, worst cases as copper stems, and the intervals as rows below on the same scale.
 */
export function histogram(plot: Histogram, width: number, height: number): object {
  const rows = intervalRows(plot);
  const left = rows.length > 0 ? gutter : 12;
  const inner = width - left - 12;
  const bottom = axisHeight + rows.length * rowHeight;
  const [from, to] = domain(plot);
  return {
    width: inner,
    height,
    autosize: 'none',
    data: once,
    padding: { left, right: 12, top: 22, bottom: bottom + 4 },
    encoding: {
      x: {
        type: 'quantitative',
        scale: { domain: [from, to], nice: false, zero: false },
        axis: { ...titleAtRightEnd(plot.title), values: ticks(from, to, inner / 48) },
      },
      y: { type: 'quantitative', scale: { domain: [0, Math.max(...plot.counts) / 0.86], nice: false }, axis: null },
    },
    layer: [
      bars(plot),
      ...plot.quantiles.flatMap((quantile, index) => quantileStem(quantile, index, plot.quantiles.length, height)),
      ...plot.worst.flatMap((worst) => worstStem(worst, height, side(worst.at, from, to))),
      ...plot.limits.flatMap((limit) => [
        ...wallAcross(limit.at, limit.forbidden, -4, height),
        ...(rows.length > 0 ? wallAcross(limit.at, limit.forbidden, height + axisHeight, height + bottom) : []),
      ]),
      ...limitLabels(plot.limits, (at) => ((at - from) / (to - from)) * inner, inner),
      ...rows.flatMap(({ name, marks }, index) => {
        const row = height + axisHeight + (index + 0.5) * rowHeight;
        return [labelInRow(name, from, row, { align: 'left', dx: -left }), ...marks(row)];
      }),
    ],
  };
}

/** Scale that shows every bar, limit, worst case and interval with a little air. */
function domain(plot: Histogram): [from: number, to: number] {
  const shown = [
    ...[plot.edges[0]!, plot.edges.at(-1)!],
    ...plot.limits.map((limit) => limit.at),
    ...plot.worst.map((worst) => worst.at),
    ...(plot.intervals?.worst ?? []),
  ];
  const [low, high] = [Math.min(...shown), Math.max(...shown)];
  const air = (high - low || Math.abs(high) || 1) * 0.06;
  return [low - air, high + air];
}

function bars(plot: Histogram): Layer {
  const values = plot.counts.map((count, index) => ({ from: plot.edges[index], to: plot.edges[index + 1], count }));
  return {
    data: { values: values.filter(({ count }) => count > 0) },
    mark: { type: 'bar', fill: colours.verdigrisTint, stroke: colours.verdigris, strokeWidth: 0.7 },
    encoding: { x: { field: 'from' }, x2: { field: 'to' }, y: { field: 'count' }, y2: { datum: 0 } },
  };
}

/** The further out, the lower; outer words stand outside their stems, the median's on top. */
function quantileStem(quantile: { at: number; label: string }, index: number, count: number, height: number): Layer[] {
  const fromMiddle = index - (count - 1) / 2;
  const top = height * (1 - [0.97, 0.46, 0.18][Math.min(2, Math.ceil(Math.abs(fromMiddle)))]!);
  const align = fromMiddle === 0 ? 'center' : fromMiddle < 0 ? 'right' : 'left';
  return [
    stem(quantile.at, top, height, { stroke: colours.verdigris, strokeWidth: 1.3 }),
    labelInRow(quantile.label, quantile.at, top - 7, {
      align,
      fill: colours.verdigris,
      dx: -3 * Math.sign(fromMiddle),
    }),
  ];
}

function worstStem(worst: { at: number; label: string }, height: number, align: string): Layer[] {
  const top = height * 0.75;
  return [
    stem(worst.at, top, height, { stroke: colours.copper, strokeWidth: 1.9 }),
    labelInRow(worst.label, worst.at, top - 8, { align, fill: colours.copper, fontWeight: 600 }),
  ];
}

/** Above the walls, on the allowed side where there is room; a word that would run into the last one stands a line lower. */
function limitLabels(limits: Histogram['limits'], pixel: (at: number) => number, width: number): Layer[] {
  const taken: [left: number, right: number][] = [];
  return limits.map(({ at, forbidden, label }) => {
    const [wide, wall] = [textWidth(label, 10), pixel(at)];
    const grows = forbidden === 'above' ? (wall >= wide ? 'right' : 'left') : width - wall >= wide ? 'left' : 'right';
    const place: [number, number] = grows === 'left' ? [wall, wall + wide] : [wall - wide, wall];
    const crowded = taken.some(([left, right]) => place[0] < right + 6 && place[1] > left - 6);
    taken.push(place);
    return labelInRow(label, at, crowded ? 2 : -12, { align: grows, dx: crowded ? (grows === 'left' ? 7 : -7) : 0 });
  });
}

/** A word at the edge of the plot grows inward. */
function side(at: number, from: number, to: number): 'left' | 'center' | 'right' {
  const share = (at - from) / (to - from);
  return share < 0.15 ? 'left' : share > 0.85 ? 'right' : 'center';
}

function intervalRows({ intervals }: Histogram): { name: string; marks: (row: number) => Layer[] }[] {
  if (!intervals) return [];
  const { worst, typical, rootSumSquare, spread } = intervals;
  const ends = (range: readonly number[], style: Layer) => (row: number) =>
    [range[0]!, range.at(-1)!].map((at) => stem(at, row - 5, row + 5, style));
  const copper = { stroke: colours.copper, strokeWidth: 1.3 };
  const dashed = { strokeDash: [3, 2], strokeWidth: 1.3 };
  return [
    {
      name: 'worst case',
      marks: (row) => [
        bar(...worst, row, copper),
        ...ends(worst, { ...copper, strokeWidth: 2 })(row),
        ring(typical, row),
      ],
    },
    ...(rootSumSquare
      ? [
          {
            name: 'root-sum-square',
            marks: (row: number) => [
              bar(...rootSumSquare, row, dashed),
              ...ends(rootSumSquare, { strokeWidth: 1.3 })(row),
              ring(typical, row),
            ],
          },
        ]
      : []),
    ...(spread
      ? [
          {
            name: 'simulated',
            marks: (row: number) => [
              bar(spread[0], spread[2], row, { stroke: colours.verdigris, strokeWidth: 5 }),
              stem(spread[1], row - 2.5, row + 2.5, { stroke: colours.paper, strokeWidth: 1.4 }),
            ],
          },
        ]
      : []),
  ];
}

/** Axis titles lie, at the right end; Vega would centre them. */
export function titleAtRightEnd(title: string): object {
  return { title, titleAnchor: 'end', titleAlign: 'right', titlePadding: 4 };
}
