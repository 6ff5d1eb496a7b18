import type { Inline, Text, Verdict } from './text.ts';

/** Pieces of running text. */

export const math = (tex: string): Inline => ({ kind: 'math', tex });
export const name = (text: string): Inline => ({ kind: 'name', text });
export const strong = (text: string): Inline => ({ kind: 'strong', text });
export const em = (text: string): Inline => ({ kind: 'em', text });
export const link = (text: string, to: string): Inline => ({ kind: 'link', text, to });
export const method = (id: string): Inline => ({ kind: 'method', text: id, id });
export const page = (of: string): Inline => ({ kind: 'page', of });
/** The number alone, in a column headed so. */
export const pageNumber = (of: string): Inline => ({ kind: 'page', of, bare: true });

export function verdictMark(verdict: Verdict, more: { figure?: string; deviation?: string | undefined } = {}): Inline {
  const { figure, deviation } = more;
  return { kind: 'verdict', verdict, ...(figure ? { figure } : {}), ...(deviation ? { deviation } : {}) };
}

/** What stands where a cell does not apply: a dash, never a blank. */
export const dash: Text = ['–'];

/** `joined([[a], [b], [c]], ', ')` → a, b, c */
export function joined(texts: readonly Text[], separator: string): Text {
  return texts.flatMap((text, i) => (i === 0 ? text : [separator, ...text]));
}

/** As in a sentence: `listed([[a], [b], [c]])` → a, b and c */
export function listed(texts: readonly Text[]): Text {
  const last = texts.at(-1);
  if (!last) return [];
  if (texts.length === 1) return last;
  return [...joined(texts.slice(0, -1), ', '), ' and ', ...last];
}
