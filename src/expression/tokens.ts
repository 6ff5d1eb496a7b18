import { decimalOf, plus, times, toNumber } from '../quantity/decimal.ts';
import { TextError } from '../quantity/text-problem.ts';
import type { Unit } from '../quantity/unit.ts';
import { functionNames } from './operations/index.ts';
import type { Span } from './tree.ts';
import { unitNamed } from './unit-word.ts';

export type Token =
  | { readonly kind: 'number'; readonly value: number; readonly unit?: Unit; readonly text: string; readonly at: Span }
  | { readonly kind: 'name'; readonly text: string; readonly at: Span }
  /** A sign in its plain form (`·` comes as `*`), or `superscript` with the digits as its `text`. */
  | { readonly kind: 'sign' | 'superscript' | 'end'; readonly text: string; readonly at: Span };

const NUMBER = /(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?/y;
const NAME =
  /[A-Za-z_\u00b5\u0370-\u03ff\u2126][\w\u00b5\u0370-\u03ff\u2126]*(?:\.[A-Za-z_\u00b5\u0370-\u03ff\u2126][\w\u00b5\u0370-\u03ff\u2126]*)*/y;
const SIGN = /<=|>=|\*\*|&&|\|\||==|!=|[-+*/^(),<>≤≥·×∙⋅÷−]/y;
const SUPERSCRIPT = /[⁺⁻]?[⁰¹²³⁴-⁹]+/y;
/** One word of a unit with its power, as it may follow a number. */
const UNIT = /(?:°C|[%°℃]|[A-Za-z\u00b5\u03bc\u03a9\u2126]+)(?![\w.])(?:\^[-+]?\d+(?![\w.])|[⁺⁻]?[⁰¹²³⁴-⁹]+)?/y;
const BRACKETED = /\[([^[\]]*)\]/y;
/** A unit word that touches the unit before it: `/us`, `·s`. */
const TOUCHING = /[/·∙⋅*](°C|[%°℃]|[A-Za-z\u00b5\u03bc\u03a9\u2126]+)(?![\w.(])/y;

const PLAIN: Readonly<Record<string, string>> = {
  '≤': '<=',
  '≥': '>=',
  '·': '*',
  '∙': '*',
  '⋅': '*',
  '×': '*',
  '÷': '/',
  '−': '-',
};
const UNWANTED: Readonly<Record<string, string>> = {
  '**': 'A power is written `a ^ b`.',
  '&&': 'Write `and(p, q)`.',
  '||': 'Write `or(p, q)`, or `parallel(a, b)` for impedances.',
  '==': 'Compare with <=, >=, < or >.',
  '!=': 'Compare with <=, >=, < or >.',
};

/** Splits the text of an expression. Throws a TextError at the first thing that cannot stand in one. */
export function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  let at = spaceEnd(text, 0);
  while (at < text.length) {
    const token = tokenAt(text, at);
    tokens.push(token);
    at = spaceEnd(text, token.at.end);
  }
  tokens.push({ kind: 'end', text: '', at: { start: text.length, end: text.length } });
  return tokens;
}

function tokenAt(text: string, start: number): Token {
  const number = matchAt(NUMBER, text, start);
  if (number) return numberAt(text, start, number[0]);
  const name = matchAt(NAME, text, start)?.[0];
  if (name) return { kind: 'name', text: name, at: { start, end: start + name.length } };
  const superscript = matchAt(SUPERSCRIPT, text, start)?.[0];
  if (superscript) return { kind: 'superscript', text: superscript, at: { start, end: start + superscript.length } };
  const sign = matchAt(SIGN, text, start)?.[0];
  const at = { start, end: start + (sign?.length ?? String.fromCodePoint(text.codePointAt(start)!).length) };
  if (sign && !UNWANTED[sign]) return { kind: 'sign', text: PLAIN[sign] ?? sign, at };
  const found = text.slice(at.start, at.end);
  throw new TextError({
    code: 'unexpected-sign',
    ...at,
    found: `\`${found}\``,
    expected: 'a number, a symbol or one of + - * / ^ ( ) , < > <= >=',
    ...hint((sign && UNWANTED[sign]) ?? SIGN_HINTS[found]),
  });
}

const SIGN_HINTS: Readonly<Record<string, string>> = {
  '=': 'Compare with <=, >=, < or >.',
  '%': 'A percentage is a number followed by %, such as 10 %.',
  '[': 'A unit in square brackets follows a number, such as 10 [V/us].',
};

/** A number and the unit behind it. */
function numberAt(text: string, start: number, digits: string): Token {
  const end = start + digits.length;
  const next = spaceEnd(text, end);
  const bracketed = matchAt(BRACKETED, text, next);
  if (bracketed)
    return withUnit(text, start, digits, bracketed[1]!, { start: next + 1, end: next + bracketed[0].length - 1 }, 1);
  const word = matchAt(UNIT, text, next)?.[0];
  const unit = word && text[spaceEnd(text, next + word.length)] !== '(' ? unitNamed(word) : undefined;
  if (word && unit) {
    rejectAmbiguous(text, digits, { start: next, end: next + word.length });
    return withUnit(text, start, digits, word, { start: next, end: next + word.length }, 0);
  }
  rejectNeighbour(text, digits, next);
  return { kind: 'number', value: finite(Number(digits), start, digits), text: digits, at: { start, end } };
}

function withUnit(text: string, start: number, digits: string, word: string, at: Span, after: number): Token {
  finite(Number(digits), start, digits);
  const unit = unitNamed(word);
  if (!unit) {
    throw new TextError({
      code: 'unknown-unit',
      ...at,
      found: `\`${word}\``,
      expected: 'a unit, such as [V/us]',
    });
  }
  // A number too small to write is 0 here; its exponent alone could make the exact sum below endless.
  const exact = decimalOf(Number(digits) === 0 ? 0 : digits.toLowerCase());
  const scaled = times(exact, decimalOf(unit.scale));
  const value = toNumber(unit.offset === 0 ? scaled : plus(scaled, decimalOf(unit.offset)));
  const end = at.end + after;
  return {
    kind: 'number',
    value: finite(value, start, digits),
    unit,
    text: text.slice(start, end),
    at: { start, end },
  };
}

/**
 * `10 V/us` could mean a unit or a symbol called `us`, and nothing in the text tells which: neither is guessed. With
 * spaces it is the symbol (a bare symbol is never a unit), in square brackets the unit.
 */
function rejectAmbiguous(text: string, digits: string, unit: Span): void {
  const word = text.slice(unit.start, unit.end);
  if (text[unit.end] === '^' || text[spaceEnd(text, unit.end)] === '^') {
    throw new TextError({
      code: 'ambiguous-power',
      start: unit.start,
      end: spaceEnd(text, unit.end) + 1,
      found: `a power behind the unit \`${word}\``,
      expected: `a whole number that belongs to the unit, as in 10 mm^2, or brackets: \`(${digits} ${word})^…\``,
    });
  }
  const touching = matchAt(TOUCHING, text, unit.end);
  if (!touching || !unitNamed(touching[1]!)) return;
  const both = word + touching[0];
  throw new TextError({
    code: 'ambiguous-unit',
    start: unit.start,
    end: unit.start + both.length,
    found: `\`${both}\` behind a number, where \`${touching[1]}\` may be a unit or a symbol`,
    expected: `\`${digits} [${both}]\` for the unit, or spaces for the symbol: \`${digits} ${word} ${touching[0][0]} ${touching[1]}\``,
  });
}

/** A number that is followed by a word or a bracket lacks an operator, or has a unit that is not known. */
function rejectNeighbour(text: string, digits: string, next: number): void {
  const neighbour =
    matchAt(NAME, text, next)?.[0] ?? (text[next] === '(' ? '(' : undefined) ?? matchAt(NUMBER, text, next)?.[0];
  if (neighbour === undefined) return;
  const word = matchAt(UNIT, text, next)?.[0];
  const isFunction = functionNames.includes(neighbour);
  const rest = neighbour === '(' ? '(…)' : isFunction ? `${neighbour}(…)` : neighbour;
  const truth = neighbour === 'and' || neighbour === 'or';
  throw new TextError({
    code: word && !isFunction && !truth ? 'unknown-unit' : 'missing-operator',
    start: next,
    end: next + neighbour.length,
    found: `\`${neighbour}\` behind the number ${digits}`,
    expected: word && !isFunction ? 'a unit such as mV, or an operator' : 'an operator such as *',
    hint: truth
      ? `Write \`${neighbour}(p, q)\`.`
      : /^[\d.]/.test(neighbour)
        ? 'One number follows another.'
        : `To multiply, write \`${digits} * ${rest}\`.`,
  });
}

function finite(value: number, start: number, digits: string): number {
  if (Number.isFinite(value)) return value;
  throw new TextError({
    code: 'number-too-large',
    start,
    end: start + digits.length,
    found: digits,
    expected: 'a number below 1.8e308',
  });
}

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function spaceEnd(text: string, from: number): number {
  let at = from;
  while (at < text.length && /\s/.test(text[at]!)) at++;
  return at;
}

const hint = (text: string | undefined): { hint: string } | Record<string, never> => (text ? { hint: text } : {});
