import { type Decimal, decimalOf, negative, times, toNumber } from './decimal.ts';
import { same } from './dimension.ts';
import { numberProblems } from './number-problems.ts';
import type { Place } from './place.ts';
import { quantityProblems } from './quantity-problems.ts';
import { largest, type Measure, readMeasure, shareUnits } from './read-measure.ts';
import { keywords, type Source } from './read-unit.ts';
import { spreadProblems } from './spread-problems.ts';
import type { Unit } from './unit.ts';

/** A change as typed: how far up and down, both without sign, in SI units; `unit` is undefined where none was typed. */
export interface Change {
  readonly up: Decimal;
  readonly down: Decimal;
  readonly unit: Unit | undefined;
  readonly place: Place;
}

export interface ChangeRead {
  readonly change: Change;
  /** Index of the token after it. */
  readonly next: number;
}

/** Whether a unit (or its word) is a share of whatever it is said of. */
export const isShare = (unit: { readonly text: string } | undefined): boolean =>
  unit?.text === '%' || unit?.text === 'ppm';

/** Reads `±1 %`, `+80 % -20 %`, `+80/-20 %` or `+50 -20 ppm/K`. */
export function readChange(source: Source, at: number): ChangeRead {
  const { text, tokens } = source;
  const token = tokens[at]!;
  if (token.text === '±') return readEven(source, at);
  if (token.text !== '+' && token.text !== '-') throw noTerm(source, at);
  const read = readSides(source, at);
  if (read.sides === 2) return read;
  const typed = text.slice(token.start + 1, read.change.place.end).trim();
  const zero = `0 ${read.change.unit?.text ?? ''}`.trim();
  const both = token.text === '+' ? `+${typed} -${zero}` : `+${zero} -${typed}`;
  throw spreadProblems.oneSided(text, read.change.place, both);
}

/** Reads `age ±0.5 %` or `age -20 %`, where one side is enough. */
export function readAgeing(source: Source, at: number): ChangeRead {
  const { text, tokens } = source;
  const sign = tokens[at + 1];
  const signed = sign?.text === '±' || sign?.text === '+' || sign?.text === '-';
  if (!signed) throw spreadProblems.ageingSign(text, sign ?? { start: text.length, end: text.length });
  const { change, next } =
    sign.text === '±' ? readEven(source, at + 1) : readSides(source, at + 1, sidesFrom(source, at + 1));
  const place = { start: tokens[at]!.start, end: change.place.end };
  if (!isShare(change.unit)) throw spreadProblems.ageingUnit(text, place);
  return { change: { ...change, place }, next };
}

function readEven(source: Source, at: number): ChangeRead {
  const after = source.tokens[at + 1];
  const start = source.tokens[at]!.start;
  if (after?.text === '+' || after?.text === '-') throw spreadProblems.signed(source.text, { start, end: after.end });
  const measure = readMeasure(source, at + 1, 'after ±, such as ±1 %');
  const size = sized(source, measure, measure.unit);
  const place = { start, end: measure.place.end };
  return { change: { up: size, down: size, unit: measure.unit, place }, next: measure.next };
}

/**
 * How many sides the ageing has that begins at a sign. Behind `age -20 %` may stand a pair of its own, as in
 * `age -20 % +50 -20 ppm/K`: only an odd number of signs in a row leaves ageing one side.
 */
function sidesFrom({ tokens }: Source, start: number): 1 | 2 {
  let signs = 0;
  for (let i = start; i < tokens.length && tokens[i]!.text !== '±' && !keywords.has(tokens[i]!.text); i++) {
    const sign = tokens[i]!.text === '+' || tokens[i]!.text === '-';
    if (sign && tokens[i - 1]!.text !== '^' && tokens[i + 1]?.kind === 'number') signs += 1;
  }
  return signs % 2 === 1 ? 1 : 2;
}

const none: Decimal = { digits: 0n, exponent: 0 };

function readSides(source: Source, at: number, most: 1 | 2 = 2): ChangeRead & { sides: 1 | 2 } {
  const { text, tokens } = source;
  const where = 'after the sign, such as +80 % -20 %';
  const first = readMeasure(source, at, where);
  const slash = tokens[first.next]?.text === '/' ? 1 : 0;
  const sign = tokens[first.next + slash];
  if (most === 1 || (sign?.text !== '+' && sign?.text !== '-')) {
    const size = sized(source, first, first.unit);
    const [up, down] = tokens[at]!.text === '+' ? [size, none] : [none, size];
    return { change: { up, down, unit: first.unit, place: first.place }, next: first.next, sides: 1 };
  }
  const second = readMeasure(source, first.next + slash, where);
  const place = { start: first.place.start, end: second.place.end };
  if (sign.text === tokens[at]!.text) throw spreadProblems.sameSign(text, place);
  const [unit, other] = shareUnits([first, second]);
  if (unit && other && !(same(unit.dimension, other.dimension) && isShare(unit) === isShare(other)))
    throw quantityProblems.wrongKind(text, second.place, other, unit);
  const [one, two] = [sized(source, first, unit), sized(source, second, other)];
  const [up, down] = sign.text === '-' ? [one, two] : [two, one];
  return { change: { up, down, unit, place }, next: second.next, sides: 2 };
}

/** The size of a change in SI units: of a temperature, a difference. */
function sized({ text }: Source, { number, place }: Measure, unit: Unit | undefined): Decimal {
  const size = number.digits < 0n ? negative(number) : number;
  const si = unit ? times(size, decimalOf(unit.scale)) : size;
  if (toNumber(si) > largest) throw numberProblems.size(text, place);
  return si;
}

function noTerm({ text, tokens }: Source, at: number) {
  const token = tokens[at]!;
  const rest = { start: token.start, end: text.trimEnd().length };
  if (token.text === '…' || token.text === '–') return quantityProblems.rangeSign(text, token);
  if (keywords.has(token.text)) return spreadProblems.misplaced(text, token);
  if (token.kind === 'word') return spreadProblems.unknownWord(text, token, keywords);
  return token.kind === 'number' ? spreadProblems.looseNumber(text, rest) : spreadProblems.unexpected(text, rest);
}
