import type { Curve } from '../packet/plot.ts';
import { textWidth } from './text-width.ts';
import { decadeTicks, ticks, widened } from './ticks.ts';

/** Where a curve stands inside its picture, and pixels of its values. Rows are counted from the top. */
export interface CurveFrame {
  readonly left: number;
  readonly inner: number;
  readonly height: number;
  readonly x: readonly [from: number, to: number];
  readonly y: readonly [low: number, high: number];
  readonly xTicks: readonly number[];
  readonly yTicks: readonly number[];
  columnOf(x: number): number;
  rowOf(y: number): number;
  /** The value drawn half-way between two others. */
  between(a: number, b: number): number;
}

export function curveFrame(plot: Curve, width: number, height: number): CurveFrame {
  const { x: xDecades = false, y: yDecades = false } = plot.decades ?? {};
  const y = yDecades ? decades(values(plot)) : heightsOf(plot);
  const yTicks = yDecades ? decadeTicks(...y, height / 16) : ticks(...y, height / 36);
  const left = Math.max(...yTicks.map((tick) => textWidth(String(tick), 10))) + 12;
  const inner = width - left - 8;
  const x = columns(plot, xDecades);
  const [column, row] = [placed(x, xDecades), placed(y, yDecades)];
  return {
    left,
    inner,
    height,
    x,
    y,
    yTicks,
    xTicks: xDecades ? decadeTicks(...x, inner / 40) : ticks(x[0], plot.points.at(-1)!.x, inner / 52),
    columnOf: (value) => column(value) * inner,
    rowOf: (value) => (1 - row(value)) * height,
    between: (a, b) => (yDecades ? Math.sqrt(a * b) : (a + b) / 2),
  };
}

/** Share of the scale below a value. */
const placed = ([from, to]: readonly [number, number], decade: boolean) =>
  decade
    ? (value: number) => Math.log(value / from) / Math.log(to / from)
    : (value: number) => (value - from) / (to - from);

function columns({ points }: Curve, decade: boolean): [from: number, to: number] {
  const [from, to] = [points[0]!.x, points.at(-1)!.x];
  if (decade) return [from, to * (to / from) ** 0.04];
  // A scale that begins not far from nought begins there.
  return [from > 0 && from < to / 3 ? 0 : from, to + (to - from) * 0.05];
}

function values(plot: Curve): number[] {
  const limits = [...plot.limits.map(({ at }) => at), ...(plot.target ? [plot.target.at] : [])];
  return [
    ...plot.points.flatMap(({ low, typical, high, limit }) => [
      low,
      typical,
      high,
      ...(limit === undefined ? [] : [limit]),
    ]),
    ...limits,
  ];
}

function heightsOf(plot: Curve): [low: number, high: number] {
  const all = values(plot);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  if (low === high) return widened(low - Math.abs(low || 1) / 2, high + Math.abs(high || 1) / 2, 6);
  return widened(low, high, 6);
}

/** Whole decades, or their halves, round the values. */
function decades(all: readonly number[]): [low: number, high: number] {
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const half = (value: number, round: (x: number) => number) => 10 ** (round(Math.log10(value) * 2) / 2);
  return [half(low, Math.floor), half(high, Math.ceil)];
}
