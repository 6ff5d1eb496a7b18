import type { DrawingPart } from '../../packet/drawing.ts';
import type { Box, Place } from '../../spec/drawing/drawing.ts';
import { boxAround } from '../../spec/drawing/frame.ts';
import { kindOf } from '../../spec/drawing/kinds.ts';
import { module } from '../circuit/draw-part.ts';

/** What labels must keep clear of, in pixels: bodies of symbols, wires and leads, edges of boxes. */
export function obstaclesOf(part: DrawingPart): Box[] {
  const { symbol, places } = part;
  const { role, body } = kindOf(symbol);
  switch (symbol) {
    case 'note':
    case 'pin':
      return [];
    case 'terminal':
      return [around(places[0]!, 3.2)];
    case 'current':
      return [grown(boxAround(places), 3, 5)];
    case 'copper':
    case 'round':
    case 'solid':
      return [pixels(body!(places))];
    case 'box':
    case 'laminate':
      return edges(boxAround(places));
    case 'motor':
    case 'amplifier':
      return [pixels(body!(places)), ...leadsTo(places, body!(places))];
  }
  if (role === 'line' || symbol === 'trace' || role === 'mark') return runs(places, part.heavy ? 1.6 : 1);
  const own = body ? [pixels(body(places))] : [];
  return [...own, ...(places.length > 1 ? runs(places.slice(0, 2), part.heavy ? 1.6 : 1) : []), ...taps(part)];
}

/** Gate and sense leads, which leave the axis of their symbol straight. */
function taps({ symbol, places }: DrawingPart): Box[] {
  const [first, second, ...rest] = places;
  if (symbol !== 'mosfet' && symbol !== 'shunt') return [];
  const upright = first![0] === second![0];
  return rest.flatMap((place) => runs([place, upright ? [first![0], place[1]] : [place[0], first![1]]], 1));
}

const leadsTo = (places: readonly Place[], { left, right, top, bottom }: Box): Box[] =>
  places.flatMap(([x, y]) => {
    const into: Place = x > left && x < right ? [x, (top + bottom) / 2] : [x <= left ? left : right, y];
    return runs([[x, y], into], 1);
  });

/** A thin box around each straight piece; slanting ones are cut into short steps. */
function runs(places: readonly Place[], half: number): Box[] {
  return places.slice(1).flatMap((to, i) => {
    const from = places[i]!;
    const slanting = from[0] !== to[0] && from[1] !== to[1];
    const steps = slanting ? Math.max(2, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) * 2)) : 1;
    return Array.from({ length: steps }, (_, k) => {
      const point = (share: number): Place => [
        from[0] + (to[0] - from[0]) * share,
        from[1] + (to[1] - from[1]) * share,
      ];
      return grown(boxAround([point(k / steps), point((k + 1) / steps)]), half, half);
    });
  });
}

function edges({ left, top, right, bottom }: Box): Box[] {
  return runs(
    [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
      [left, top],
    ],
    1,
  );
}

export const pixels = ({ left, top, right, bottom }: Box): Box => ({
  left: left * module,
  top: top * module,
  right: right * module,
  bottom: bottom * module,
});

/** A box of modules in pixels, with some room round it. */
function grown(box: Box, x: number, y: number): Box {
  const { left, top, right, bottom } = pixels(box);
  return { left: left - x, top: top - y, right: right + x, bottom: bottom + y };
}

export const around = ([x, y]: Place, half: number): Box => ({
  left: x * module - half,
  top: y * module - half,
  right: x * module + half,
  bottom: y * module + half,
});
