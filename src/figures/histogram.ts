import type { Histogram } from '../packet/plot.ts';
import { extent, type Frame, growth, histogramFrame, middleOf } from './histogram-frame.ts';
import { bar, type Layer, labelInRow, once, ring, stem, wallAcross } from './layer.ts';
import { textWidth } from './text-width.ts';
import { colours } from './theme.ts';
import { ticks } from './ticks.ts';

const axisHeight = 30;
const rowHeight = 26;

/**
 * Vega-Lite specification of a histogram `width` pixels wide and `height` high (bars alone): bars of simulated boards, quantiles
 * as stems of three heights, limits as walls, worst cases as copper stems, and the intervals as rows below on the same scale.
 */
export function histogram(plot: Histogram, width: number, height: number): object {
  const rows = intervalRows(plot);
  const frame = histogramFrame(plot, width);
  const { left, right, inner, from, to } = frame;
  const bottom = axisHeight + rows.length * rowHeight;
  const middle = middleOf(plot);
  return {
    width: inner,
    height,
    autosize: 'none',
    data: once,
    padding: { left, right, top: 22, bottom: bottom + 4 },
    encoding: {
      x: {
        type: 'quantitative',
        scale: { domain: [from, to], nice: false, zero: false },
        axis: { ...titleAtRightEnd(plot.title), values: ticks(from, to, inner / 48) },
      },
      y: { type: 'quantitative', scale: { domain: [0, Math.max(...plot.counts) / 0.86], nice: false }, axis: null },
    },
    layer: [
      bars(plot, frame),
      ...plot.quantiles.flatMap((quantile, index) => quantileStem(quantile, rank(index, plot), middle, height)),
      ...plot.worst.flatMap((worst) => worstStem(worst, height, growth(worst.at, middle))),
      ...plot.limits.flatMap((limit) => [
        ...wallAcross(limit.at, limit.forbidden, -4, height),
        ...(rows.length > 0 ? wallAcross(limit.at, limit.forbidden, height + axisHeight, height + bottom) : []),
      ]),
      ...limitLabels(plot.limits, frame),
      ...rows.flatMap(({ name, marks }, index) => {
        const row = height + axisHeight + (index + 0.5) * rowHeight;
        return [labelInRow(name, from, row, { align: 'left', dx: -left }), ...marks(row)];
      }),
    ],
  };
}

function bars({ edges, counts }: Histogram, frame: Frame): Layer {
  const values = counts.map((count, index) => ({ from: edges[index], to: edges[index + 1], count }));
  // Outlines of bars that are hardly wider than a line would hide them.
  const fine = frame.pixel(edges[1]!) - frame.pixel(edges[0]!) < 1.6;
  const style = fine
    ? { fill: colours.verdigris, strokeWidth: 0 }
    : { fill: colours.verdigrisTint, stroke: colours.verdigris, strokeWidth: 0.7 };
  return {
    data: { values: values.filter(({ count }) => count > 0) },
    mark: { type: 'bar', ...style },
    encoding: { x: { field: 'from' }, x2: { field: 'to' }, y: { field: 'count' }, y2: { datum: 0 } },
  };
}

/** How many quantiles from the median outward: 0, 1 or 2. */
function rank(index: number, { quantiles }: Histogram): number {
  return Math.min(2, Math.ceil(Math.abs(index - (quantiles.length - 1) / 2)));
}

/** The further out, the lower; outer words stand outside their stems, the median's on top. */
function quantileStem(
  { at, label }: { at: number; label: string },
  rank: number,
  middle: number,
  height: number,
): Layer[] {
  const top = height * (1 - [0.97, 0.46, 0.18][rank]!);
  const align = growth(at, middle);
  const dx = { right: -3, center: 0, left: 3 }[align];
  return [
    stem(at, top, height, { stroke: colours.verdigris, strokeWidth: 1.3 }),
    labelInRow(label, at, top - 7, { align, fill: colours.verdigris, dx }),
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
function limitLabels(limits: Histogram['limits'], { pixel, inner }: Frame): Layer[] {
  const taken: [left: number, right: number][] = [];
  return limits.map(({ at, forbidden, label }) => {
    const [wide, wall] = [textWidth(label, 10), pixel(at)];
    const grows = forbidden === 'above' ? (wall >= wide ? 'right' : 'left') : inner - wall >= wide ? 'left' : 'right';
    const place = extent(wall, wide, grows);
    const crowded = taken.some(([left, right]) => place[0] < right + 6 && place[1] > left - 6);
    taken.push(place);
    return labelInRow(label, at, crowded ? 2 : -12, { align: grows, dx: crowded ? (grows === 'left' ? 7 : -7) : 0 });
  });
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
