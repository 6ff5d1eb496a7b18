import { type Decimal, decimalOf, negative, times } from './decimal.ts';
import { isPure, multiplied, same } from './dimension.ts';
import { kinds } from './kinds.ts';
import type { Place } from './place.ts';
import type { Distribution } from './quantity.ts';
import { quantityProblems } from './quantity-problems.ts';
import { type Measure, readMeasure, shareUnits } from './read-measure.ts';
import { keywords, type Source } from './read-unit.ts';
import type { Unit } from './unit.ts';

/** A change as typed: how far up and down, both without sign, in SI units; `unit` is undefined where none was typed. */
export interface Change {
  readonly up: Decimal;
  readonly down: Decimal;
  readonly unit: Unit | undefined;
  readonly place: Place;
}

/** What stands behind a value, sorted by what it says. */
export interface Terms {
  /** In the value's dimension, or a share of the value when `unit` is % or ppm. */
  readonly tolerance?: Change;
  /** A share per kelvin, or the value's dimension per kelvin. */
  readonly drift?: Change;
  readonly ageing?: Change;
  readonly distribution?: { readonly word: Distribution; readonly place: Place };
}

const perKelvin = kinds['temperature coefficient'].of;
const none: Decimal = { digits: 0n, exponent: 0 };
const distributions: readonly Distribution[] = ['normal', 'uniform', 'triangular'];

/** Whether a unit is a share of whatever it is said of. */
export const isShare = (unit: Unit | undefined): boolean => unit?.text === '%' || unit?.text === 'ppm';

/** Reads everything from `start` to the end of the text as terms of a value in `base`. */
export function readTerms(source: Source, start: number, base: Unit): Terms {
  const terms: { -readonly [K in keyof Terms]: Terms[K] } = {};
  let at = start;
  while (at < source.tokens.length) {
    const token = source.tokens[at]!;
    const word = distributions.find((distribution) => distribution === token.text);
    if (word) {
      if (terms.distribution) throw quantityProblems.twice(source.text, token, 'distribution');
      terms.distribution = { word, place: token };
      at += 1;
      continue;
    }
    const { change, next } = token.text === 'age' ? readAgeing(source, at) : readChange(source, at);
    const kind = token.text === 'age' ? 'ageing' : kindOfChange(source, change, base);
    if (terms[kind]) throw quantityProblems.twice(source.text, change.place, kind);
    terms[kind] = change;
    at = next;
  }
  return terms;
}

interface ChangeRead {
  readonly change: Change;
  readonly next: number;
}

function readChange(source: Source, at: number): ChangeRead {
  const { text, tokens } = source;
  const token = tokens[at]!;
  if (token.text === '±') return readEven(source, at);
  if (token.text !== '+' && token.text !== '-') throw noTerm(source, at);
  const read = readSides(source, at);
  if (read.sides === 2) return read;
  const typed = text.slice(token.start + 1, read.change.place.end).trim();
  throw quantityProblems.oneSided(text, read.change.place, token.text === '+' ? `+${typed} -0 %` : `+0 % -${typed}`);
}

function readAgeing(source: Source, at: number): ChangeRead {
  const { text, tokens } = source;
  const sign = tokens[at + 1];
  const where = 'with its sign after age, such as age ±0.5 % or age -20 %';
  const signed = sign?.text === '±' || sign?.text === '+' || sign?.text === '-';
  if (!signed) throw quantityProblems.missingNumber(text, sign ?? { start: text.length, end: text.length }, where);
  const { change, next } = sign.text === '±' ? readEven(source, at + 1) : readSides(source, at + 1);
  const place = { start: tokens[at]!.start, end: change.place.end };
  if (!isShare(change.unit)) throw quantityProblems.ageingUnit(text, place);
  return { change: { ...change, place }, next };
}

/** `±1 %` */
function readEven(source: Source, at: number): ChangeRead {
  const after = source.tokens[at + 1];
  const start = source.tokens[at]!.start;
  if (after?.text === '+' || after?.text === '-') throw quantityProblems.signed(source.text, { start, end: after.end });
  const measure = readMeasure(source, at + 1, 'after ±, such as ±1 %');
  const size = sized(measure, measure.unit);
  const place = { start, end: measure.place.end };
  return { change: { up: size, down: size, unit: measure.unit, place }, next: measure.next };
}

/** `+80 % -20 %`, `+50 -20 ppm/K`, `+80/-20 %`, or one side alone. */
function readSides(source: Source, at: number): ChangeRead & { sides: 1 | 2 } {
  const { text, tokens } = source;
  const where = 'after the sign, such as +80 % -20 %';
  const first = readMeasure(source, at, where);
  const slash = tokens[first.next]?.text === '/' ? 1 : 0;
  const sign = tokens[first.next + slash];
  if (sign?.text !== '+' && sign?.text !== '-') {
    const size = sized(first, first.unit);
    const change = { ...(tokens[at]!.text === '+' ? { up: size, down: none } : { up: none, down: size }) };
    return { change: { ...change, unit: first.unit, place: first.place }, next: first.next, sides: 1 };
  }
  const second = readMeasure(source, first.next + slash, where);
  const place = { start: first.place.start, end: second.place.end };
  if (sign.text === tokens[at]!.text) throw quantityProblems.sameSign(text, place);
  const [unit, other] = shareUnits([first, second]);
  if (unit && other && !(same(unit.dimension, other.dimension) && isShare(unit) === isShare(other)))
    throw quantityProblems.wrongKind(text, second.place, other.dimension, unit.dimension, unit);
  const [one, two] = [sized(first, unit), sized(second, other)];
  const [up, down] = sign.text === '-' ? [one, two] : [two, one];
  return { change: { up, down, unit, place }, next: second.next, sides: 2 };
}

/** The size of a change in SI units: of a temperature, a difference. */
function sized({ number }: Measure, unit: Unit | undefined): Decimal {
  const size = number.digits < 0n ? negative(number) : number;
  return unit ? times(size, decimalOf(unit.scale)) : size;
}

/** What a change says of a value in `base`, from its dimension. */
function kindOfChange({ text }: Source, { unit, place }: Change, base: Unit): 'tolerance' | 'drift' {
  if (!unit) {
    if (base.text === '') return 'tolerance';
    throw quantityProblems.toleranceUnit(text, place, base);
  }
  if (isShare(unit)) {
    if (unit.text === base.text) throw quantityProblems.shareOfShare(text, place, unit);
    return 'tolerance';
  }
  if (same(unit.dimension, base.dimension)) return 'tolerance';
  if (same(unit.dimension, perKelvin)) return 'drift';
  const ownPerKelvin = !isPure(base.dimension) && same(unit.dimension, multiplied(base.dimension, perKelvin));
  if (ownPerKelvin && !isPure(unit.dimension)) return 'drift';
  throw quantityProblems.toleranceKind(text, place, unit.dimension, base);
}

function noTerm({ text, tokens }: Source, at: number) {
  const token = tokens[at]!;
  if (token.text === '…' || token.text === '–') return quantityProblems.rangeSign(text, token);
  if (token.kind === 'word') return quantityProblems.unknownWord(text, token, keywords);
  if (token.kind === 'number')
    return quantityProblems.looseNumber(text, { start: token.start, end: text.trimEnd().length });
  return quantityProblems.unexpected(text, { start: token.start, end: text.trimEnd().length });
}
