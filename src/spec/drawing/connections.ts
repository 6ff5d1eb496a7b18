import type { DrawnPart, Place } from './drawing.ts';
import { kindOf } from './kinds.ts';

/** A straight piece of a wire. */
export type Segment = readonly [from: Place, to: Place];

export const samePlace = (a: Place, b: Place): boolean => a[0] === b[0] && a[1] === b[1];

/** Whether a place lies on a segment, its ends included. */
export const lies = ([x, y]: Place, [from, to]: Segment): boolean =>
  x >= Math.min(from[0], to[0]) &&
  x <= Math.max(from[0], to[0]) &&
  y >= Math.min(from[1], to[1]) &&
  y <= Math.max(from[1], to[1]);

export function segmentsOf({ places }: DrawnPart): Segment[] {
  return places.slice(1).map((to, i) => [places[i]!, to]);
}

/** Ends of a part that must meet something: those of symbols, pins and wires. */
export function endsOf(part: DrawnPart): readonly Place[] {
  const { role } = kindOf(part.kind);
  if (role === 'mark') return [];
  return role === 'line' ? [part.places[0]!, part.places.at(-1)!] : part.places;
}

/** How many conductors leave a place: two for a wire that passes, one for each end; a terminal ring counts none. */
export function conductorsAt(place: Place, parts: readonly DrawnPart[]): number {
  let count = 0;
  for (const part of parts) {
    const { role } = kindOf(part.kind);
    if (role === 'line') {
      for (const segment of segmentsOf(part)) {
        if (!lies(place, segment)) continue;
        count += segment.some((end) => samePlace(end, place)) ? 1 : 2;
      }
    } else if (role === 'ends' && part.kind !== 'terminal')
      count += part.places.filter((end) => samePlace(end, place)).length;
  }
  return count;
}

/** Places where three conductors or more meet, which a dot marks. */
export function junctions(parts: readonly DrawnPart[]): Place[] {
  const ends = parts.flatMap(endsOf);
  const places = ends.filter((place, i) => ends.findIndex((other) => samePlace(other, place)) === i);
  return places.filter((place) => conductorsAt(place, parts) > 2);
}
