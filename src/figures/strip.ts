import type { Strip } from '../packet/strip.ts';
import { escapeXml } from './escape.ts';
import { svgText } from './raised.ts';
import { textWidth } from './text-width.ts';

/**
 * The range rule as SVG. Places along the scale are per cent of the width, so that it fits any column; heights and strokes are
 * pixels. In a `row` it fills the height of its table cell, so that limit and target run through from row to row; in the
 * `margin` it is as high as its numbers need.
 */
export function stripSvg(strip: Strip, place: 'margin' | 'row'): string {
  const says = escapeXml(strip.says);
  const middle = middleOf(place);
  const shapes = `${roomBar(strip)}${worstLine(strip)}${rootSumSquare(strip)}${spreadBar(strip)}${typicalRing(strip)}${measuredMark(strip)}`;
  const baseline = place === 'margin' ? '<line class="strip-scale" x2="100%" y1="10" y2="10"/>' : '';
  return `<svg class="strip strip-${place}" role="img" aria-label="${says}">${baseline}${targetLine(strip, place)}<svg y="${middle}" overflow="visible">${shapes}</svg>${walls(strip, place)}${place === 'margin' ? numbers(strip) : ''}</svg>`;
}

const middleOf = (place: 'margin' | 'row'): string => (place === 'row' ? '50%' : '10');

/** Where `value` lies on the scale, in per cent of its width; not clamped. `position(strip on 0 to 40, 10)` → 25 */
export function position(scale: readonly [from: number, to: number], value: number): number {
  return ((value - scale[0]) / (scale[1] - scale[0])) * 100;
}

/** `value` on the scale, or the end of the scale beyond which it lies. */
export function clamped(scale: readonly [from: number, to: number], value: number): { at: number; beyond: boolean } {
  const at = position(scale, value);
  return at < 0 ? { at: 0, beyond: true } : at > 100 ? { at: 100, beyond: true } : { at, beyond: false };
}

function worstLine({ scale, worst, oneEnded }: Strip): string {
  if (!worst) return '';
  const [low, high] = [clamped(scale, worst[0]), clamped(scale, worst[1])];
  const line = `<line class="strip-worst" x1="${percent(low.at)}" x2="${percent(high.at)}"/>`;
  const end = (point: { at: number; beyond: boolean }, direction: 1 | -1) =>
    point.beyond
      ? `<svg x="${percent(point.at)}" overflow="visible"><path class="strip-arrow" d="M0 0l${-6 * direction}-4v8z"/></svg>`
      : `<line class="strip-worst-end" x1="${percent(point.at)}" x2="${percent(point.at)}" y1="-4.5" y2="4.5"/>`;
  return `${line}${end(low, -1)}${oneEnded ? '' : end(high, 1)}`;
}

function roomBar({ scale, room }: Strip): string {
  if (!room) return '';
  const [low, high] = [clamped(scale, room[0]), clamped(scale, room[1])];
  const bar = `<rect class="strip-room" x="${percent(low.at)}" y="-2.2" width="${percent(high.at - low.at)}" height="4.4"/>`;
  const arrow = (point: Point, direction: 1 | -1) =>
    point.beyond
      ? `<svg x="${percent(point.at)}" overflow="visible"><path class="strip-room-arrow" d="M${-4 * direction}-4.2L0 0l${-4 * direction} 4.2"/></svg>`
      : '';
  return `${bar}${arrow(low, -1)}${arrow(high, 1)}`;
}

function rootSumSquare({ scale, rootSumSquare: range }: Strip): string {
  if (!range) return '';
  const [low, high] = range.map((value) => percent(clamped(scale, value).at));
  const end = (at: string | undefined) => `<line class="strip-rss-end" x1="${at}" x2="${at}" y1="-3.5" y2="3.5"/>`;
  return `<line class="strip-rss" x1="${low}" x2="${high}"/>${end(low)}${end(high)}`;
}

function spreadBar({ scale, spread }: Strip): string {
  if (!spread) return '';
  const [low, median, high] = spread.map((value) => clamped(scale, value)) as [Point, Point, Point];
  const bar = `<rect class="strip-spread" x="${percent(low.at)}" y="-2.5" width="${percent(high.at - low.at)}" height="5"/>`;
  if (median.beyond) return bar;
  const at = percent(median.at);
  return `${bar}<line class="strip-median" x1="${at}" x2="${at}" y1="-2.5" y2="2.5"/>`;
}

type Point = ReturnType<typeof clamped>;

function typicalRing({ scale, typical }: Strip): string {
  if (typical === undefined) return '';
  const point = clamped(scale, typical);
  return point.beyond ? '' : `<circle class="strip-typical" cx="${percent(point.at)}" r="2.7"/>`;
}

function measuredMark({ scale, measured }: Strip): string {
  if (measured === undefined) return '';
  const { at, beyond } = clamped(scale, measured);
  // Beyond the scale the triangle lies on its side and points where the reading is.
  const shape = beyond ? (at > 0 ? 'M0 0l-8-4.5v9z' : 'M0 0l8-4.5v9z') : 'M0-1l4.5-8h-9z';
  return `<svg x="${percent(at)}" overflow="visible"><path class="strip-measured" d="${shape}"/></svg>`;
}

function targetLine({ scale, target }: Strip, place: 'margin' | 'row'): string {
  if (target === undefined) return '';
  const point = clamped(scale, target);
  if (point.beyond) return '';
  return `<line class="strip-target" x1="${percent(point.at)}" x2="${percent(point.at)}" y2="${place === 'row' ? '100%' : 20}"/>`;
}

function walls({ scale, limits, room }: Strip, place: 'margin' | 'row'): string {
  // The ends of a part's room concern its row alone; a limit that a table shares runs through.
  const short = place === 'margin' || room !== undefined;
  const [top, height] = short ? ['-8', '16'] : ['0', '100%'];
  const middle = short ? middleOf(place) : '0';
  return limits
    .map(({ at, forbidden }) => ({ point: clamped(scale, at), forbidden }))
    .filter(({ point }) => !point.beyond)
    .map(({ point, forbidden }) => {
      // A little window cuts the hatching to the height of the wall.
      const window = `<svg x="${forbidden === 'above' ? 0 : -4.5}" y="${top}" width="4.5" height="${height}">${hatching}</svg>`;
      const line = `<line class="strip-wall" y1="${top}" y2="${short ? 8 : height}"/>`;
      return `<svg x="${percent(point.at)}" y="${middle}" overflow="visible">${window}${line}</svg>`;
    })
    .join('');
}

// Dashes of a wide line, sheared to 45°: strokes 4.5 px long and apart over any height.
const hatching = '<line class="strip-hatch" x1="2.25" x2="2.25" y1="-6" y2="150%" transform="skewY(-45)"/>';

function numbers(strip: Strip): string {
  return placeNumbers(strip, marginWidth)
    .map(({ at, text, worst }) => {
      const kind = worst ? 'strip-number strip-number-worst' : 'strip-number';
      return `<text class="${kind}" x="${percent(at)}" y="27">${svgText(text)}</text>`;
    })
    .join('');
}

/** Width of the margin column on paper, in pixels: where numbers are closest. */
const marginWidth = 181;

/**
 * Centres of the numbers under a strip, in per cent: under their values, but inside the strip and apart from each other.
 * `width` is the strip's in pixels, with lettering of 10 px.
 */
export function placeNumbers(strip: Strip, width: number): { at: number; text: string; worst: boolean }[] {
  const placed = strip.labels
    .toSorted((one, other) => one.at - other.at)
    .map(({ at, text, worst = false }) => {
      const half = textWidth(text, 10, worst ? 600 : 400) / 2;
      return { text, worst, half, centre: inside((clamped(strip.scale, at).at / 100) * width, half, width) };
    });
  for (let round = 0; round < 8; round++) {
    for (let index = 1; index < placed.length; index++) {
      const [left, right] = [placed[index - 1]!, placed[index]!];
      const lacking = left.centre + left.half + apart - (right.centre - right.half);
      if (lacking <= 0) continue;
      left.centre = inside(left.centre - lacking / 2, left.half, width);
      right.centre = inside(right.centre + lacking / 2, right.half, width);
    }
  }
  return placed.map(({ text, worst, centre }) => ({ text, worst, at: (centre / width) * 100 }));
}

const apart = 6;

function inside(centre: number, half: number, width: number): number {
  return Math.max(half, Math.min(width - half - 1, centre));
}

function percent(value: number): string {
  return `${Number(value.toFixed(2))}%`;
}
