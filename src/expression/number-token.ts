import { decimalOf, plus, times, toNumber } from '../quantity/decimal.ts';
import type { Unit } from '../quantity/unit.ts';
import { functionNames } from './operations/index.ts';
import { refuse } from './refuse.ts';
import { matchAt, NAME, NUMBER, spaceEnd } from './scan.ts';
import type { Span } from './tree.ts';
import { unitNamed } from './unit-word.ts';

export interface NumberToken {
  readonly kind: 'number';
  /** SI base units. */
  readonly value: number;
  readonly unit?: Unit;
  readonly text: string;
  readonly at: Span;
}

const WORD = '(?:°C|[%°℃]|[A-Za-z\\u00b5\\u03bc\\u03a9\\u2126]+)';
/** One word of a unit with its power, as it may follow a number. */
const UNIT = new RegExp(`${WORD}(?![\\w.])(?:\\^[-+]?\\d+(?![\\w.])|[⁺⁻]?[⁰¹²³⁴-⁹]+)?`, 'y');
const BRACKETED = /\[([^[\]]*)\]/y;
/** A word that touches the unit before it: `/us`, `·s`. */
const TOUCHING = new RegExp(`[/·∙⋅*](${WORD})(?![\\w.(])`, 'y');

/** Reads the number `digits` at `start`, and the unit behind it. */
export function numberAt(text: string, start: number, digits: string): NumberToken {
  const end = start + digits.length;
  const value = finite(Number(digits), { start, end }, digits);
  const next = spaceEnd(text, end);
  const bracketed = matchAt(BRACKETED, text, next);
  if (bracketed) {
    const unit = unitNamed(bracketed[1]!);
    const after = next + bracketed[0].length;
    if (unit) return inSi(text, digits, unit, { start, end: after });
    return refuse('unknown-unit', { start: next + 1, end: after - 1 }, `\`${bracketed[1]}\``, 'a unit, such as [V/us]');
  }
  const word = matchAt(UNIT, text, next)?.[0];
  const unit = word && !isCall(text, word, next) ? unitNamed(word) : undefined;
  if (word && unit) {
    const at = { start: next, end: next + word.length };
    rejectPower(text, digits, at);
    rejectTouching(text, digits, at);
    return inSi(text, digits, unit, { start, end: at.end });
  }
  rejectNeighbour(text, digits, next, word);
  return { kind: 'number', value, text: digits, at: { start, end } };
}

/** `min` is a minute and a function: before a bracket it is the function. */
const isCall = (text: string, word: string, at: number): boolean =>
  functionNames.includes(word) && text[spaceEnd(text, at + word.length)] === '(';

function inSi(text: string, digits: string, unit: Unit, at: Span): NumberToken {
  // A number too small to write is 0 here; its exponent alone could make the exact sum below endless.
  const exact = decimalOf(Number(digits) === 0 ? 0 : digits.toLowerCase());
  const scaled = times(exact, decimalOf(unit.scale));
  const value = toNumber(unit.offset === 0 ? scaled : plus(scaled, decimalOf(unit.offset)));
  return { kind: 'number', value: finite(value, at, digits), unit, text: text.slice(at.start, at.end), at };
}

function finite(value: number, at: Span, digits: string): number {
  return Number.isFinite(value) ? value : refuse('number-too-large', at, digits, 'a number below 1.8e308');
}

function rejectPower(text: string, digits: string, unit: Span): void {
  const sign = spaceEnd(text, unit.end);
  if (text[sign] !== '^') return;
  const word = text.slice(unit.start, unit.end);
  refuse(
    'ambiguous-power',
    { start: unit.start, end: sign + 1 },
    `a power behind the unit \`${word}\``,
    `a whole number that belongs to the unit, as in 10 mm^2, or brackets: \`(${digits} ${word})^…\``,
  );
}

/**
 * `10 V/us` could mean a unit or a symbol called `us`, and nothing in the text tells which: neither is guessed. With
 * spaces it is the symbol (a bare symbol is never a unit), in square brackets the unit.
 */
function rejectTouching(text: string, digits: string, unit: Span): void {
  const touching = matchAt(TOUCHING, text, unit.end);
  if (!touching || !unitNamed(touching[1]!)) return;
  const word = text.slice(unit.start, unit.end);
  const [both, symbol] = [word + touching[0], touching[1]];
  refuse(
    'ambiguous-unit',
    { start: unit.start, end: unit.start + both.length },
    `\`${both}\` behind a number, where \`${symbol}\` may be a unit or a symbol`,
    `\`${digits} [${both}]\` for the unit, or spaces for the symbol: \`${digits} ${word} ${touching[0][0]} ${symbol}\``,
  );
}

/** A number that is followed by a word, a bracket or a number lacks an operator, or has a unit that is not known. */
function rejectNeighbour(text: string, digits: string, next: number, word: string | undefined): void {
  const name = matchAt(NAME, text, next)?.[0];
  const neighbour = name ?? (text[next] === '(' ? '(' : matchAt(NUMBER, text, next)?.[0]);
  if (neighbour === undefined) return;
  const at = { start: next, end: next + neighbour.length };
  const found = `\`${neighbour}\` behind the number ${digits}`;
  const operator = 'an operator such as *';
  if (name === 'and' || name === 'or') refuse('missing-operator', at, found, operator, `Write \`${name}(p, q)\`.`);
  if (!name && neighbour !== '(') refuse('missing-operator', at, found, operator, 'One number follows another.');
  const isFunction = functionNames.includes(neighbour);
  const product = `To multiply, write \`${digits} * ${!name ? '(…)' : isFunction ? `${name}(…)` : name}\`.`;
  if (word && !isFunction) refuse('unknown-unit', at, found, 'a unit such as mV, or an operator', product);
  refuse('missing-operator', at, found, operator, product);
}
