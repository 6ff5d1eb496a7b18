import { type Decimal, decimalOf, negative } from './decimal.ts';
import type { Token } from './lex.ts';
import { numberProblems } from './number-problems.ts';
import type { Place } from './place.ts';
import { readUnit, type Source, startsUnit } from './read-unit.ts';
import type { Unit } from './unit.ts';

/** Sizes of value that are read, in SI base units; beyond them squares and quotients leave what a double can hold. */
export const smallest = 1e-100;
export const largest = 1e100;

/** A number as typed, with its sign and, where it has one, its unit. */
export interface Measure {
  readonly number: Decimal;
  readonly unit?: Unit;
  readonly place: Place;
  /** Index of the token after it. */
  readonly next: number;
}

/**
 * Reads `-40 degC`, `3.3`, `10kohm`. `where` ends the message when there is no number: "a number …".
 * @throws TextError `missing-number`, `decimal-comma`, `digit-groups`, `letter-for-point` and the like, and those of units
 */
export function readMeasure(source: Source, at: number, where: string): Measure {
  const { text, tokens } = source;
  const sign = tokens[at]?.text === '-' || tokens[at]?.text === '+' ? 1 : 0;
  const token = tokens[at + sign];
  if (token?.kind !== 'number') throw noNumber(text, token, where);
  checkNumber(source, at + sign);
  const size = decimalOf(token.text);
  const number = sign && tokens[at]!.text === '-' ? negative(size) : size;
  const start = tokens[at]!.start;
  const after = at + sign + 1;
  if (!startsUnit(source, after)) return { number, place: { start, end: token.end }, next: after };
  const { unit, next } = readUnit(source, after);
  return { number, unit, place: { start, end: tokens[next - 1]!.end }, next };
}

/** A number without a unit takes that of the next number that has one, else of the last before it. */
export function shareUnits(measures: readonly Measure[]): (Unit | undefined)[] {
  return measures.map(
    (measure, i) =>
      measure.unit ??
      measures.slice(i).find((later) => later.unit)?.unit ??
      measures.slice(0, i).findLast((earlier) => earlier.unit)?.unit,
  );
}

function noNumber(text: string, token: Token | undefined, where: string) {
  if (!token) return numberProblems.missingNumber(text, { start: text.length, end: text.length }, where);
  if (token.kind === 'odd' && /[\uff10-\uff19]/.test(token.text)) return numberProblems.fullWidth(text, token);
  return numberProblems.missingNumber(text, token, where);
}

/** Refuses what looks like a number elsewhere and would be misread here. */
function checkNumber({ text, tokens }: Source, at: number): void {
  const token = tokens[at]!;
  const [second, third] = [tokens[at + 1], tokens[at + 2]];
  const place = (last: Token): Place => ({ start: token.start, end: last.end });
  if (token.text.length > 40) throw numberProblems.digits(text, token);
  if (Math.abs(Number(token.text.split('e')[1] ?? 0)) > 200) throw numberProblems.size(text, token);
  const joined = second && !second.spaced ? second : undefined;
  const close = joined && third?.kind === 'number' && !third.spaced ? third : undefined;
  if (joined?.text === ',' && close) throw numberProblems.decimalComma(text, place(close));
  if (joined && /^[_'’]$/.test(joined.text) && close) throw numberProblems.grouping(text, place(lastGroup(tokens, at)));
  if (joined?.text === '.') throw numberProblems.noDecimals(text, place(joined));
  if (joined?.kind === 'word' && joined.text.length === 1 && close)
    throw numberProblems.letterForPoint(text, place(close), withPoint(token.text, joined.text, close.text));
  if (second?.kind === 'number' && /^\d{1,3}$/.test(token.text) && /^\d{3}(\.\d+)?$/.test(second.text))
    throw numberProblems.grouping(text, place(lastGroup(tokens, at)));
}

/** The last of the three-digit groups that follow a number. */
function lastGroup(tokens: readonly Token[], at: number): Token {
  let last = at;
  for (let i = at + 1; i < tokens.length; i++) {
    if (tokens[i]!.kind === 'number') last = i;
    else if (!/^[_'’]$/.test(tokens[i]!.text)) break;
  }
  return tokens[last]!;
}

/** `4k7` → `4.7 kohm`; capacitors for the small prefixes, as parts lists write them. */
function withPoint(whole: string, letter: string, decimals: string): string {
  const units: Readonly<Record<string, string>> = {
    R: 'ohm',
    K: 'kohm',
    k: 'kohm',
    M: 'Mohm',
    u: 'uF',
    n: 'nF',
    p: 'pF',
  };
  return `${whole}.${decimals} ${units[letter] ?? letter}`;
}
