import type { Drawing, DrawingLine, DrawingPart } from '../../packet/drawing.ts';
import { junctions } from '../../spec/drawing/connections.ts';
import type { Box, Place } from '../../spec/drawing/drawing.ts';
import { boxAround } from '../../spec/drawing/frame.ts';
import { candidatesFor } from './candidates.ts';
import { labelSize, type Size } from './label.ts';
import { around, obstaclesOf, pixels } from './obstacles.ts';
import { placeLabels } from './place-labels.ts';

/** A label in its place, pixels. */
export interface PlacedLabel {
  readonly lines: readonly DrawingLine[];
  readonly box: Box;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface LaidOut {
  readonly labels: readonly PlacedLabel[];
  readonly dots: readonly { readonly place: Place; readonly heavy: boolean }[];
  /** Everything that is drawn, labels and all. */
  readonly frame: Box;
  /** Boxes that no label may touch. */
  readonly obstacles: readonly Box[];
  /** Labels for which there was no room. */
  readonly crowded: number;
}

/** Finds room for the labels of a drawing, in pixels of 10 to a module. The same drawing gives the same layout. */
export function layOut({ parts }: Pick<Drawing, 'parts'>): LaidOut {
  const pins = parts
    .filter(({ symbol, label }) => symbol === 'pin' && label.length)
    .map((part) => pinLabel(part, parts));
  const obstacles = [...parts.flatMap(obstaclesOf), ...pins.map(({ box }) => box)];
  const free = parts.filter(({ symbol, label }) => symbol !== 'pin' && label.length);
  const drawn = boxAround(obstacles.flatMap(corners));
  const sizes = free.map(({ label }) => labelSize(label));
  const { places, crowded } = placeLabels(
    free.map((part, i) => ({ candidates: candidatesFor(part, sizes[i]!) })),
    obstacles,
    drawn,
  );
  const labels = [
    ...pins,
    ...free.map((part, i) => ({ lines: part.label, box: places[i]!.box, anchor: places[i]!.anchor })),
  ];
  const frame = boxAround([...corners(drawn), ...labels.flatMap(({ box }) => corners(box))]);
  return { labels, dots: dotsOf(parts), frame, obstacles, crowded };
}

const corners = ({ left, top, right, bottom }: Box): Place[] => [
  [left, top],
  [right, bottom],
];

/** The name of a pin stands inside its box, at the edge. */
function pinLabel({ places, label }: DrawingPart, parts: readonly DrawingPart[]): PlacedLabel {
  const [place] = places as [Place];
  const size = labelSize(label);
  const { left, top } = around(place, 0);
  const box = parts
    .filter(({ symbol }) => symbol === 'box')
    .map((one) => boxAround(one.places))
    .find((one) => holds(one, place));
  if (!box) throw new Error(`A pin at ${place.join(',')} is on no box.`);
  if (place[0] === box.left) return { lines: label, ...beside(left + 4, top - size.height / 2, size), anchor: 'start' };
  if (place[0] === box.right)
    return { lines: label, ...beside(left - 4 - size.width, top - size.height / 2, size), anchor: 'end' };
  const under = place[1] === box.top ? top + 3 : top - 3 - size.height;
  return { lines: label, ...beside(left - size.width / 2, under, size), anchor: 'middle' };
}

const holds = ({ left, right, top, bottom }: Box, [x, y]: Place): boolean =>
  x >= left && x <= right && y >= top && y <= bottom;

const beside = (left: number, top: number, { width, height }: Size): { box: Box } => ({
  box: { left, top, right: left + width, bottom: top + height },
});

function dotsOf(parts: readonly DrawingPart[]): { place: Place; heavy: boolean }[] {
  const drawn = parts.map(({ symbol, places, heavy }) => ({ kind: symbol, places, symbols: [], heavy }));
  const heavy = drawn.filter((part) => part.heavy);
  const strong = heavy.flatMap(({ kind, places }) => (kind === 'power' ? [pixels(boxAround(places))] : []));
  return junctions(drawn).map((place) => ({
    place,
    heavy: strong.some((box) => holds(box, [place[0] * 10, place[1] * 10])),
  }));
}
