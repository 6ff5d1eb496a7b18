/**
 * Layers of a plot for which Vega-Lite has no mark of its own. Lengths are pixels of the plot; `x` and `y` are data unless
 * they say otherwise.
 */
import { colours } from './theme.ts';

export type Layer = Readonly<Record<string, unknown>>;

/** Data of a plot whose marks bring their own places: Vega-Lite draws a mark once for each row. */
export const once = { values: [{}] };

const x = (datum: number) => ({ datum, type: 'quantitative' });
const y = x;
const px = (value: number) => ({ value });

const wallWidth = 1.7;
const hatch = { spacing: 4.5, length: 4.5, width: 0.65 };

/** Vertical wall at `at` from pixel row `top` to `bottom`, hatched towards the values that are not allowed. */
export function wallAcross(at: number, forbidden: 'above' | 'below', top: number, bottom: number): Layer[] {
  const away = forbidden === 'above' ? hatch.length : -hatch.length;
  const strokes = steps(top, bottom - hatch.length).map((start) => ({ start, end: start + hatch.length }));
  return [
    {
      data: { values: strokes },
      mark: { type: 'rule', strokeWidth: hatch.width, x2Offset: away },
      encoding: { x: x(at), x2: { datum: at }, y: pixelRow('end'), y2: { field: 'start' } },
    },
    { mark: { type: 'rule', strokeWidth: wallWidth }, encoding: { x: x(at), y: px(top), y2: px(bottom) } },
  ];
}

/** Horizontal wall at `at` from pixel column `left` to `right`, hatched towards the values that are not allowed. */
export function wallAlong(at: number, forbidden: 'above' | 'below', left: number, right: number): Layer[] {
  const away = forbidden === 'above' ? -hatch.length : hatch.length;
  const strokes = steps(left, right - hatch.length).map((start) => ({ start, end: start + hatch.length }));
  return [
    {
      data: { values: strokes },
      mark: { type: 'rule', strokeWidth: hatch.width, y2Offset: away },
      encoding: { y: y(at), y2: { datum: at }, x: pixelColumn('start'), x2: { field: 'end' } },
    },
    { mark: { type: 'rule', strokeWidth: wallWidth }, encoding: { y: y(at), x: px(left), x2: px(right) } },
  ];
}

/** Hatching along a line that is no level, towards the values that are not allowed. */
export function hatched(
  line: readonly { readonly x: number; readonly y: number }[],
  forbidden: 'above' | 'below',
  frame: { columnOf(x: number): number },
): Layer {
  const away = forbidden === 'above' ? -hatch.length : hatch.length;
  const columns = line.map((place) => frame.columnOf(place.x));
  const values = steps(columns[0]!, columns.at(-1)! - hatch.length).map((column) => {
    const right = Math.max(
      1,
      columns.findIndex((one) => one >= column),
    );
    const [a, b] = [line[right - 1]!, line[right]!];
    const share = (column - columns[right - 1]!) / (columns[right]! - columns[right - 1]! || 1);
    return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
  });
  return {
    data: { values },
    mark: { type: 'rule', strokeWidth: hatch.width, x2Offset: hatch.length, y2Offset: away },
    encoding: { x: { field: 'x' }, x2: { field: 'x' }, y: { field: 'y' }, y2: { field: 'y' } },
  };
}

/** A word at a data point, moved by pixels. */
export function label(text: string, at: { x: number; y: number }, style: Layer = {}): Layer {
  return { mark: { type: 'text', text, ...style }, encoding: { x: x(at.x), y: y(at.y) } };
}

/** A word at a data value of `x` and a pixel row. */
export function labelInRow(text: string, at: number, row: number, style: Layer = {}): Layer {
  return { mark: { type: 'text', text, ...style }, encoding: { x: x(at), y: px(row) } };
}

/** Vertical line at a data value of `x` between two pixel rows. */
export function stem(at: number, top: number, bottom: number, style: Layer = {}): Layer {
  return { mark: { type: 'rule', ...style }, encoding: { x: x(at), y: px(top), y2: px(bottom) } };
}

/** Horizontal line between two data values in a pixel row. */
export function bar(from: number, to: number, row: number, style: Layer = {}): Layer {
  return { mark: { type: 'rule', ...style }, encoding: { x: x(from), x2: { datum: to }, y: px(row) } };
}

/** Ring of the typical value, its inside paper. */
export function ring(at: number, row: number): Layer {
  const mark = {
    type: 'point',
    size: Math.PI * 2.7 ** 2,
    fill: colours.paper,
    stroke: colours.ink,
    strokeWidth: 1.2,
    opacity: 1,
  };
  return { mark, encoding: { x: x(at), y: px(row) } };
}

const pixelRow = (field: string) => ({ field, type: 'quantitative', scale: null, axis: null });
const pixelColumn = pixelRow;

function steps(from: number, to: number): number[] {
  const count = Math.max(0, Math.floor((to - from) / hatch.spacing) + 1);
  return Array.from({ length: count }, (_, index) => from + index * hatch.spacing);
}
