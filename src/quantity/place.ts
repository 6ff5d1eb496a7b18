import { TextError } from './text-problem.ts';

/** Offsets into a text: first character, and the one after the last. */
export interface Place {
  readonly start: number;
  readonly end: number;
}

/** What stands at a place, in quotes, cut when it is long. */
export function quoted(text: string, place: Place): string {
  const typed = text.slice(place.start, place.end);
  return `"${typed.length > 40 ? `${typed.slice(0, 39)}…` : typed}"`;
}

/** `a voltage`, `an area`. */
export const withArticle = (noun: string): string => `${/^[aeio]/.test(noun) ? 'an' : 'a'} ${noun}`;

export function textError(code: string, place: Place, found: string, expected: string, hint?: string): TextError {
  const { start, end } = place;
  return new TextError(hint ? { code, start, end, found, expected, hint } : { code, start, end, found, expected });
}
