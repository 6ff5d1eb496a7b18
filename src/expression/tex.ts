import type { Tex } from './operation.ts';

/** Pieces of TeX that operations are typeset from. */

const ORDER = ['relation', 'sum', 'product', 'power', 'atom'] as const;

/** Whether `binds` holds together at least as tightly as `needed`. */
function holds(binds: Tex['binds'], needed: Tex['binds']): boolean {
  return ORDER.indexOf(binds) >= ORDER.indexOf(needed);
}

/** TeX of `term`, in brackets where it binds looser than `needed`. */
export function wrap(term: Tex, needed: Tex['binds']): string {
  return holds(term.binds, needed) ? term.tex : brackets(term.tex);
}

const TALL = /\\(frac|sqrt|left|begin)|\^/;

/** Round brackets; they grow with tall contents only, for growing ones put space around them. */
export function brackets(tex: string): string {
  return TALL.test(tex) ? `\\left(${tex}\\right)` : `(${tex})`;
}

/** `name(a, b)`; `name` is a TeX operator such as `\ln`. */
export function called(name: string, args: readonly Tex[]): Tex {
  const inside = args.map((arg) => arg.tex).join(',\\; ');
  const gap = TALL.test(inside) ? '\\!' : '';
  return { tex: `${name}${gap}${brackets(inside)}`, binds: 'power' };
}

/** `base` raised to `exponent`, which is TeX already. */
export function raisedTex(base: Tex, exponent: string): Tex {
  return { tex: `${wrap(base, 'atom')}^{${exponent}}`, binds: 'power', opens: opening(base, 'atom') };
}

export function negative(term: Tex): Tex {
  return { tex: `-${wrap(term, 'product')}`, binds: 'sum', minus: term };
}

/** A sign above the line stands before it: −t/τ. */
export function fraction(a: Tex, b: Tex): Tex {
  if (a.minus) return negative(fraction(a.minus, b));
  return { tex: `\\frac{${a.tex}}{${b.tex}}`, binds: 'product', opens: 'fraction' };
}

/**
 * A product without a sign where none is needed: a thin space between symbols; a dot before a number, after a unit
 * and between a number and a fraction, which would read as `2 1/3`.
 */
export function juxtaposed(a: Tex, b: Tex): Tex {
  if (a.minus) return negative(juxtaposed(a.minus, b));
  const closes = holds(a.binds, 'product') ? a.closes : undefined;
  const dot = b.opens === 'figure' || closes === 'unit' || (closes === 'figure' && b.opens === 'fraction');
  const [left, right] = [wrap(a, 'product'), wrap(b, 'product')];
  // Growing brackets bring their own thin space.
  const between = dot ? ' \\cdot ' : right.startsWith('\\left') || left.endsWith('\\right)') ? ' ' : ' \\, ';
  return {
    tex: left + between + right,
    binds: 'product',
    opens: opening(a, 'product'),
    closes: holds(b.binds, 'product') ? b.closes : undefined,
  };
}

function opening(term: Tex, needed: Tex['binds']): Tex['opens'] {
  return holds(term.binds, needed) ? term.opens : undefined;
}
