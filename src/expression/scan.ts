/** What a sticky pattern matches at an offset. */
export function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/** The offset after any space from `from` on. */
export function spaceEnd(text: string, from: number): number {
  let at = from;
  while (at < text.length && /\s/.test(text[at]!)) at++;
  return at;
}

const LETTER = 'A-Za-z_\\u00b5\\u0370-\\u03ff\\u2126';
const WORD = `[${LETTER}][${LETTER}0-9]*`;

/** `R_top`, `θ_ja`, `pack.V_bat`. */
export const NAME = new RegExp(`${WORD}(?:\\.${WORD})*`, 'y');
export const NUMBER = /(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?/y;
export const SUPERSCRIPT = /[⁺⁻]?[⁰¹²³⁴-⁹]+/y;
