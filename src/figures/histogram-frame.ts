import type { Histogram } from '../packet/plot.ts';
import { textWidth } from './text-width.ts';

/** Where the bars stand inside a picture: what is left of its width beside the words that hang over the ends of the scale. */
export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly inner: number;
  readonly from: number;
  readonly to: number;
  /** Pixel column of a value, from the left end of the scale. */
  pixel(value: number): number;
}

const leastEdge = 12;
/** Left of the interval rows, for their names. */
const gutter = 78;

export function histogramFrame(plot: Histogram, width: number): Frame {
  const [from, to] = domain(plot);
  const least = plot.intervals ? gutter : leastEdge;
  let frame = frameOf(from, to, width, least, leastEdge);
  // Wider edges move the words inward a little, so the second round only trims.
  for (let round = 0; round < 2; round++) {
    const extents = words(plot).map(({ at, wide, grows }) => extent(frame.pixel(at), wide, grows));
    const left = Math.max(least, ...extents.map(([start]) => 2 - start));
    const right = Math.max(leastEdge, ...extents.map(([, end]) => end - frame.inner + 2));
    frame = frameOf(from, to, width, Math.ceil(left), Math.ceil(right));
  }
  return frame;
}

function frameOf(from: number, to: number, width: number, left: number, right: number): Frame {
  const inner = width - left - right;
  return { left, right, inner, from, to, pixel: (value) => ((value - from) / (to - from)) * inner };
}

export type Growth = 'left' | 'center' | 'right';

/** Words over stems grow away from the middle of the boards; `align` of the text, so `right` ends at its stem. */
export function growth(at: number, middle: number): Growth {
  return at < middle ? 'right' : at > middle ? 'left' : 'center';
}

/** Middle of the boards, from which words grow away. */
export function middleOf(plot: Histogram): number {
  const median = plot.quantiles[(plot.quantiles.length - 1) / 2];
  return median?.at ?? (plot.edges[0]! + plot.edges.at(-1)!) / 2;
}

function words(plot: Histogram): { at: number; wide: number; grows: Growth }[] {
  const middle = middleOf(plot);
  return [
    ...plot.quantiles.map(({ at, label }) => ({ at, wide: textWidth(label, 10) + 3, grows: growth(at, middle) })),
    ...plot.worst.map(({ at, label }) => ({ at, wide: textWidth(label, 10, 600), grows: growth(at, middle) })),
  ];
}

/** Left and right end of a word whose anchor stands at `pixel`. */
export function extent(pixel: number, wide: number, grows: Growth): [start: number, end: number] {
  if (grows === 'left') return [pixel, pixel + wide];
  return grows === 'right' ? [pixel - wide, pixel] : [pixel - wide / 2, pixel + wide / 2];
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
  const air = (high - low || Math.abs(high) || 1) * 0.04;
  return [low - air, high + air];
}
