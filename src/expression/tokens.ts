import { type NumberToken, numberAt } from './number-token.ts';
import { refuse } from './refuse.ts';
import { matchAt, NAME, NUMBER, SUPERSCRIPT, spaceEnd } from './scan.ts';
import type { Span } from './tree.ts';

export type Token =
  | NumberToken
  | { readonly kind: 'name'; readonly text: string; readonly at: Span }
  /** A sign in its plain form (`·` comes as `*`), or `superscript` with the digits as its `text`. */
  | { readonly kind: 'sign' | 'superscript' | 'end'; readonly text: string; readonly at: Span };

const SIGN = /<=|>=|\*\*|&&|\|\||==|!=|[-+*/^(),<>≤≥·×∙⋅÷−]/y;
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
/** What to write instead of a sign that is none of ours. */
const HINTS: Readonly<Record<string, string>> = {
  '**': 'A power is written `a ^ b`.',
  '&&': 'Write `and(p, q)`.',
  '||': 'Write `or(p, q)`, or `parallel(a, b)` for impedances.',
  '==': 'Compare with <=, >=, < or >.',
  '!=': 'Compare with <=, >=, < or >.',
  '=': 'Compare with <=, >=, < or >.',
  '%': 'A percentage is a number followed by %, such as 10 %.',
  '[': 'A unit in square brackets follows a number, such as 10 [V/us].',
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
  if (sign && !HINTS[sign]) return { kind: 'sign', text: PLAIN[sign] ?? sign, at };
  const found = text.slice(at.start, at.end);
  const expected = 'a number, a symbol or one of + - * / ^ ( ) , < > <= >=';
  return refuse('unexpected-sign', at, `\`${found}\``, expected, HINTS[sign ?? found]);
}
