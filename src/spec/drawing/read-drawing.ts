import type { Report } from '../report.ts';
import { meant } from '../schema-problems.ts';
import type { Path } from '../yaml-file.ts';
import { conductorsAt, endsOf, lies, samePlace, segmentsOf } from './connections.ts';
import type { Box, Drawing, DrawnPart, Place } from './drawing.ts';
import { overlap } from './frame.ts';
import { kindOf } from './kinds.ts';
import { parsePart } from './parse-part.ts';

export interface DrawingSpec {
  readonly says: string;
  readonly parts: readonly string[];
}

/** A drawing as typed, read without asking whether it is right: that was found when its method was read. */
export const drawingOf = ({ says, parts }: DrawingSpec): Drawing => ({ says, parts: parts.map(parsePart) });

/**
 * Reads a drawing and reports what is wrong with it, each with its line: symbols and places that are not known, symbols that
 * stand on each other, wires through symbols, ends that meet nothing.
 * @param path  of the key `drawing`
 * @param known  symbols and results that labels may name
 */
export function readDrawing(
  report: Report,
  path: Path,
  spec: DrawingSpec,
  known: readonly string[],
): Drawing | undefined {
  const parts = spec.parts.map((text, i) => report.attempt([...path, 'parts', i], () => parsePart(text)));
  const read = parts.filter((part) => part !== undefined);
  if (read.length < parts.length) return undefined;
  for (const [i, part] of read.entries()) {
    const fault = unknownSymbol(part, known) ?? stands(part, read, i) ?? loose(part, read);
    if (fault) report.add([...path, 'parts', i], fault);
  }
  return { says: spec.says, parts: read };
}

type Fault = Parameters<Report['add']>[1];

function unknownSymbol({ symbols }: DrawnPart, known: readonly string[]): Fault | undefined {
  const name = symbols.find((one) => !known.includes(one));
  if (name === undefined) return undefined;
  return {
    code: 'unknown-name',
    found: `\`${name}\``,
    expected: 'a symbol or a result of this circuit, or words in quotes',
    ...meant(name, known),
  };
}

/** A symbol on another one, or a wire through one. Boxes hold what is written or drawn in them. */
function stands(part: DrawnPart, parts: readonly DrawnPart[], index: number): Fault | undefined {
  const { role } = kindOf(part.kind);
  const taken = parts.filter((other, i) => i !== index && kindOf(other.kind).role === 'ends').flatMap(bodyOf);
  if (role === 'ends') {
    const [own] = bodyOf(part);
    return own && taken.some((body) => overlap(own, body))
      ? { code: 'parts-overlap', found: `a ${part.kind} on another symbol`, expected: 'places of its own' }
      : undefined;
  }
  if (role !== 'line') return undefined;
  return segmentsOf(part).some((segment) => taken.some((body) => overlap(thin(segment), body)))
    ? { code: 'wire-through-part', found: 'a wire through a symbol', expected: 'a way round it' }
    : undefined;
}

function bodyOf({ kind, places }: DrawnPart): Box[] {
  const body = kindOf(kind).body?.(places);
  return body ? [body] : [];
}

const thin = ([from, to]: readonly [Place, Place]): Box => ({
  left: Math.min(from[0], to[0]) - 0.05,
  right: Math.max(from[0], to[0]) + 0.05,
  top: Math.min(from[1], to[1]) - 0.05,
  bottom: Math.max(from[1], to[1]) + 0.05,
});

function loose(part: DrawnPart, parts: readonly DrawnPart[]): Fault | undefined {
  const { role, places: names } = kindOf(part.kind);
  const end = endsOf(part).find((place) => !meets(part, place, parts));
  if (!end) return undefined;
  const name = role === 'line' ? 'an end' : `the ${names[part.places.indexOf(end)]}`;
  return {
    code: 'loose-end',
    found: `${name} of a ${part.kind} at ${end.join(',')} that meets nothing`,
    expected: 'the end of another symbol or a wire there',
  };
}

function meets(part: DrawnPart, place: Place, parts: readonly DrawnPart[]): boolean {
  if (part.kind === 'pin')
    return onEdge(place, parts, 'box') && conductorsAt(place, parts) + terminalsAt(place, parts) > 0;
  if (onEdge(place, parts, 'copper')) return true;
  const others = parts.filter((other) => other !== part);
  return (
    conductorsAt(place, others) + terminalsAt(place, others) + pinsAt(place, others) > 0 ||
    part.places.filter((own) => samePlace(own, place)).length > 1
  );
}

const terminalsAt = (place: Place, parts: readonly DrawnPart[]): number =>
  parts.filter(({ kind, places }) => kind === 'terminal' && samePlace(places[0]!, place)).length;
/** Pins, and heads of flows: heat comes in where its arrow ends. */
const pinsAt = (place: Place, parts: readonly DrawnPart[]): number =>
  parts.filter(({ kind, places }) => (kind === 'pin' || kind === 'flow') && samePlace(places.at(-1)!, place)).length;

function onEdge(place: Place, parts: readonly DrawnPart[], area: 'box' | 'copper'): boolean {
  return parts.some(({ kind, places }) => {
    if (kind !== area) return false;
    const [[x1, y1], [x2, y2]] = places as [Place, Place];
    const corners: Place[] = [
      [x1, y1],
      [x2, y1],
      [x2, y2],
      [x1, y2],
    ];
    return corners.some((corner, i) => lies(place, [corner, corners[(i + 1) % 4]!]));
  });
}
