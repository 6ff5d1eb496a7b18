import type { Curve, CurvePoint } from '../packet/plot.ts';
import type { CurveFrame } from './curve-frame.ts';
import { type Layer, label } from './layer.ts';
import { textWidth } from './text-width.ts';
import { colours } from './theme.ts';

/** A word that is to stand somewhere, with places it may take, best first. */
interface Wanted {
  readonly text: string;
  readonly style: Layer & { readonly fontWeight?: 400 | 600 };
  readonly places: readonly Place[];
  /** Better left out than crossed. */
  readonly optional?: boolean;
}
/** A data point, and pixels from there to the middle of the word's height. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly align: 'left' | 'center' | 'right';
}
interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The words of a curve, each where it crosses least of the lines and of the words placed before it. */
export function curveLabels(plot: Curve, frame: CurveFrame): Layer[] {
  const lines = linesOf(plot, frame);
  const taken: Box[] = [];
  return [...limitWords(plot), ...endWords(plot), typicalWord(plot), bandWord(plot, frame)].flatMap((wanted) => {
    const tried = wanted.places.map((place, order) => {
      const box = boxOf(wanted, place, frame);
      return { place, box, order, cost: costOf(box, lines, taken, frame) };
    });
    const best = tried.reduce<(typeof tried)[number] | undefined>(
      (sofar, next) => (!sofar || next.cost < sofar.cost ? next : sofar),
      undefined,
    );
    if (!best || (wanted.optional && best.cost > 0)) return [];
    taken.push(best.box);
    const { x, y, dx, dy, align } = best.place;
    return [label(wanted.text, { x, y }, { ...wanted.style, dx, dy, align })];
  });
}

const halfHeight = 5.5;

function boxOf({ text, style }: Wanted, { x, y, dx, dy, align }: Place, frame: CurveFrame): Box {
  const wide = textWidth(text, 10, style.fontWeight ?? 400);
  const anchor = frame.columnOf(x) + dx;
  const left = align === 'left' ? anchor : align === 'right' ? anchor - wide : anchor - wide / 2;
  const middle = frame.rowOf(y) + dy;
  return { left, right: left + wide, top: middle - halfHeight, bottom: middle + halfHeight };
}

/** How much a word would cross: each pixel column of a line, each word, each edge of the picture. */
function costOf(box: Box, lines: readonly Line[], taken: readonly Box[], frame: CurveFrame): number {
  const crossed = lines.filter((line) => crosses(box, line)).length;
  const covered = taken.filter(
    (other) =>
      box.left < other.right + 4 && box.right > other.left - 4 && box.top < other.bottom && box.bottom > other.top,
  ).length;
  const outside = box.left < -frame.left || box.right > frame.inner + 6 || box.top < -13 || box.bottom > frame.height;
  return crossed + 3 * covered + (outside ? 10 : 0);
}

interface Line {
  readonly from: readonly [column: number, row: number];
  readonly to: readonly [column: number, row: number];
}

function linesOf(plot: Curve, frame: CurveFrame): Line[] {
  const at = (x: number, y: number): [number, number] => [frame.columnOf(x), frame.rowOf(y)];
  const between = (pick: (point: CurvePoint) => number | undefined): Line[] =>
    plot.points.slice(1).flatMap((b, i): Line[] => {
      const a = plot.points[i]!;
      const [from, to] = [pick(a), pick(b)];
      return from === undefined || to === undefined || a.run !== b.run
        ? []
        : [{ from: at(a.x, from), to: at(b.x, to) }];
    });
  const levels = [...plot.limits.map(({ at: level }) => level), ...(plot.target ? [plot.target.at] : [])];
  const chosen = plot.chosen ? frame.columnOf(plot.chosen.x) : undefined;
  return [
    ...between(({ low }) => low),
    ...between(({ high }) => high),
    ...between(({ typical }) => typical),
    ...between(({ limit }) => limit),
    ...levels.map((level): Line => ({ from: [0, frame.rowOf(level)], to: [frame.inner, frame.rowOf(level)] })),
    ...(chosen === undefined ? [] : [{ from: [chosen, 0], to: [chosen, frame.height] } satisfies Line]),
  ];
}

/** Whether a straight line passes through a box: cut to the box's columns, its rows meet the box's. */
function crosses(box: Box, { from, to }: Line): boolean {
  const [left, right] = from[0] <= to[0] ? [from, to] : [to, from];
  if (right[0] < box.left || left[0] > box.right) return false;
  if (left[0] === right[0]) return Math.min(left[1], right[1]) < box.bottom && Math.max(left[1], right[1]) > box.top;
  const rowAt = (column: number) => left[1] + ((right[1] - left[1]) * (column - left[0])) / (right[0] - left[0]);
  const rows = [rowAt(Math.max(left[0], box.left)), rowAt(Math.min(right[0], box.right))];
  return Math.min(...rows) < box.bottom && Math.max(...rows) > box.top;
}

/** Over the wall on the side that is not allowed, else under it; at the left, at the right, in the middle. */
function limitWords(plot: Curve): Wanted[] {
  const first = plot.points[0]!;
  const last = plot.points.at(-1)!;
  const middle = plot.points[Math.floor(plot.points.length / 2)]!;
  const along = (levelAt: (point: CurvePoint) => number, forbidden: 'above' | 'below'): Place[] => {
    const sides = forbidden === 'above' ? [-12, 9] : [13, -9];
    return [
      ...sides.map((dy): Place => ({ x: first.x, y: levelAt(first), dx: 2, dy, align: 'left' })),
      ...sides.map((dy): Place => ({ x: last.x, y: levelAt(last), dx: 0, dy, align: 'right' })),
      ...sides.map((dy): Place => ({ x: middle.x, y: levelAt(middle), dx: 0, dy, align: 'center' })),
    ];
  };
  return [
    ...plot.limits.map(({ label: text, at, forbidden }) => ({ text, style: {}, places: along(() => at, forbidden) })),
    ...(plot.limitLine
      ? [{ text: plot.limitLine.label, style: {}, places: along(({ limit }) => limit!, plot.limitLine.forbidden) }]
      : []),
    ...(plot.target ? [{ text: plot.target.label, style: {}, places: along(() => plot.target!.at, 'above') }] : []),
  ];
}

/** Beside their dots. */
function endWords({ ends }: Curve): Wanted[] {
  return ends.map(({ x, y, label: text }) => ({
    text,
    style: { fill: colours.copper, fontWeight: 600 },
    places: [-9, 11, -18, 20, -28, 30].flatMap((dy): Place[] => [
      { x, y, dx: -5, dy, align: 'right' },
      { x, y, dx: 5, dy, align: 'left' },
    ]),
  }));
}

/** Along the typical line, from its right end inward: there the band is mostly widest. */
function typicalWord({ points, typicalLabel: text }: Curve): Wanted {
  const places = points.toReversed().flatMap(({ x, typical: y }): Place[] =>
    [11, -10, 19, -18].flatMap((dy): Place[] => [
      { x, y, dx: 0, dy, align: 'center' },
      { x, y, dx: -4, dy, align: 'right' },
      { x, y, dx: 4, dy, align: 'left' },
    ]),
  );
  return { text, style: {}, places };
}

/** In the band, from the left; left out where it is nowhere thick enough. */
function bandWord({ points }: Curve, frame: CurveFrame): Wanted {
  const places = points.flatMap(({ x, low, high, typical }): Place[] =>
    [low, high].flatMap((edge) =>
      (['left', 'center', 'right'] as const).map(
        (align): Place => ({ x, y: frame.between(edge, typical), dx: align === 'left' ? 3 : 0, dy: 0, align }),
      ),
    ),
  );
  return { text: 'worst-case band', style: { fill: colours.copper }, places, optional: true };
}
