/** A piece of the text of a quantity or unit. */
export interface Token {
  /** `power` is a run of superscript digits, `odd` whatever has no place in a quantity. */
  readonly kind: 'number' | 'word' | 'mark' | 'power' | 'odd';
  /** As read: signs, µ, Ω and superscripts in one spelling, numbers as `decimalOf` reads them. */
  readonly text: string;
  readonly start: number;
  readonly end: number;
  /** Whether space stands before it. */
  readonly spaced: boolean;
}

/** Longest text that is read; longer is no quantity. */
export const longestText = 500;

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const space = /[\s\u200a]+/y;
// A thin or unbreakable space may part thousands, as the packet prints them; a plain one may not.
const number = /(?:\d+(?:[\u00a0\u2009\u202f]\d{3}(?!\d))*(?:\.\d+)?|\.\d+)(?:[eE][+\-\u2212]?\d+)?/y;
const powerOfTen = /\s*×\s*10(?:\^([+\-\u2212]?\d+)|([⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+))/y;
const word = /°[CF]|[°℃%]|\p{L}+(?:_[\p{L}\d_]*)?/uy;
const power = /[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/y;
const mark = /±|\+\/[-\u2212]|\+[-\u2212]|\*\*|\.\.\.?|[-+\u2212*·⋅×/^()√…–—,]/y;
const fullWidth = /[\uff0e\uff10-\uff19]+/y;

const spellings: Readonly<Record<string, string>> = {
  '+/-': '±',
  '+/\u2212': '±',
  '+-': '±',
  '+\u2212': '±',
  '\u2212': '-',
  '⋅': '·',
  '**': '^',
  '..': '…',
  '...': '…',
  '—': '–',
};

/** Splits the text of a quantity into tokens; throws nothing, what it does not know is `odd`. Time grows with length. */
export function lex(text: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  const match = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    return pattern.exec(text);
  };
  while (at < text.length) {
    const gap = match(space)?.[0].length ?? 0;
    at += gap;
    if (at >= text.length) break;
    const start = at;
    const add = (kind: Token['kind'], read: string, end: number) => {
      tokens.push({ kind, text: read, start, end, spaced: gap > 0 });
      at = end;
    };
    let found = match(number);
    if (found) {
      at += found[0].length;
      const scaled = match(powerOfTen);
      add('number', numberText(found[0], scaled), at + (scaled?.[0].length ?? 0));
      continue;
    }
    found = match(word);
    if (found) {
      add('word', wordText(found[0]), at + found[0].length);
      continue;
    }
    found = match(power);
    if (found) {
      add('power', plainDigits(found[0]), at + found[0].length);
      continue;
    }
    found = match(mark);
    if (found) {
      add('mark', spellings[found[0]] ?? found[0], at + found[0].length);
      continue;
    }
    const odd = match(fullWidth)?.[0] ?? String.fromCodePoint(text.codePointAt(at)!);
    add('odd', odd, at + odd.length);
  }
  return tokens;
}

function numberText(digits: string, scaled: RegExpExecArray | null): string {
  const plain = digits
    .replace(/[\u00a0\u2009\u202f]/g, '')
    .replace('\u2212', '-')
    .replace('E', 'e');
  if (!scaled) return plain;
  const exponent = (scaled[1] ?? plainDigits(scaled[2]!)).replace('\u2212', '-');
  const [mantissa, own = '0'] = plain.split('e');
  return `${mantissa}e${Number(own) + Number(exponent)}`;
}

/** One code point for micro (U+00B5) and ohm (U+03A9): each has two. */
const wordText = (typed: string): string => typed.replaceAll('\u03bc', '\u00b5').replaceAll('\u2126', '\u03a9');

const plainDigits = (raised: string): string =>
  raised.replace(/./g, (character) =>
    character === '⁻' ? '-' : character === '⁺' ? '' : String(superscripts.indexOf(character)),
  );

/** The printed form of a whole exponent: `²`, `⁻¹`. */
export const raisedDigits = (exponent: number): string =>
  String(exponent).replace(/./g, (character) => (character === '-' ? '⁻' : superscripts[Number(character)]!));
