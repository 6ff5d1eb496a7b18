import { pureUnit } from './compose-unit.ts';
import { lex, longestText } from './lex.ts';
import { readUnit, startsUnit } from './read-unit.ts';
import type { Unit } from './unit.ts';
import { unitProblems } from './unit-problems.ts';

/**
 * Reads a unit as an engineer types it: `kohm`, `K/W`, `V/us`, `A^2 s`, `W/(m K)`, `nV/sqrt(Hz)`, `1/K`.
 * `1` and an empty text are the pure number.
 * @throws TextError `unknown-unit`, `missing-unit`, `ambiguous-unit`, `bad-power`, `open-bracket`, `too-long`
 * @example parseUnit('kohm') // { text: 'kΩ', dimension: [2, 1, -3, -2, 0, 0, 0], scale: 1000, offset: 0 }
 */
export function parseUnit(text: string): Unit {
  if (text.length > longestText) throw unitProblems.tooLong(text, longestText);
  const source = { text, tokens: lex(text) };
  const { tokens } = source;
  if (tokens.length === 0 || (tokens.length === 1 && tokens[0]!.text === '1')) return pureUnit;
  if (!startsUnit(source, 0)) throw unitProblems.missing(text, { start: tokens[0]!.start, end: tokens.at(-1)!.end });
  const { unit, next } = readUnit(source, 0);
  const rest = tokens[next];
  if (rest?.kind === 'word') throw unitProblems.unknown(text, rest);
  if (rest) throw unitProblems.unexpected(text, { start: rest.start, end: tokens.at(-1)!.end });
  return unit;
}
