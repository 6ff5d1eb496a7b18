import type { Tex } from '../operation.ts';
import { operationNamed } from '../operations/index.ts';
import { texSymbol } from '../tex-symbol.ts';
import { texUnit } from '../tex-unit.ts';
import type { Tree } from '../tree.ts';

/** How the leaves are written. A plain string is judged by what it looks like (`figureTex`). */
export interface Leaves {
  readonly symbol?: (name: string) => string | Tex;
  readonly number?: (number: Tree & { readonly kind: 'number' }) => string | Tex;
}

/**
 * TeX of an equation's right side, for KaTeX. With no `leaves` as symbols; with numbers put in where `leaves.symbol`
 * gives the figure that each name stands for.
 * @example typeset(parseExpression('V * R_bot / (R_top + R_bot)')) // '\\frac{V \\, R_{\\mathrm{bot}}}{R_{\\mathrm{top}} + R_{\\mathrm{bot}}}'
 */
export function typeset(tree: Tree, leaves: Leaves = {}): string {
  return texOf(tree, leaves).tex;
}

/**
 * The same in pieces between which a long equation may be broken: its top-level terms, each with its sign before it from
 * the second on; or the factors of a product. Joined by a space they are the whole.
 * @example typesetTerms(parseExpression('a + b - c')) // ['a', '+ b', '- c']
 */
export function typesetTerms(tree: Tree, leaves: Leaves = {}): string[] {
  const signs: Readonly<Record<string, string>> = { add: '+', subtract: '-' };
  const sign = tree.kind === 'call' ? signs[tree.operation] : undefined;
  if (tree.kind !== 'call' || !sign) return [typeset(tree, leaves)];
  const before = typesetTerms(tree.args[0]!, leaves);
  const whole = typeset(tree, leaves);
  return [...before, whole.slice(before.join(' ').length).trimStart()];
}

export function texOf(tree: Tree, leaves: Leaves): Tex {
  switch (tree.kind) {
    case 'number':
      return asTex(leaves.number?.(tree) ?? numberTex(tree));
    case 'symbol':
      return asTex(leaves.symbol?.(tree.name) ?? { tex: texSymbol(tree.name), binds: 'atom' });
    case 'call':
      return operationNamed(tree.operation).tex(tree.args.map((arg) => texOf(arg, leaves)));
    default:
      return tree satisfies never;
  }
}

/**
 * A number with its unit as TeX that an equation can take in: what it looks like says where it needs brackets.
 * @example figureTex('150\\,\\mathrm{k\\Omega}').binds // 'product'
 */
export function figureTex(tex: string): Tex {
  const opens = /^[\d.]/.test(tex) ? 'figure' : undefined;
  if (/^\s*[-−]/.test(tex) || /\d\s*[-+]\s*\d/.test(tex)) return { tex, binds: 'sum' };
  if (/^[\d.{},]+$/.test(tex)) return { tex, binds: 'atom', opens: 'figure', closes: 'figure' };
  const compound = /\\[,;:]|\\(times|cdot|mathrm|text)\b|~|\\%/.test(tex);
  const closes = opens && compound ? 'unit' : undefined;
  return { tex, binds: compound && opens ? 'product' : 'atom', opens, closes };
}

const asTex = (leaf: string | Tex): Tex => (typeof leaf === 'string' ? figureTex(leaf) : leaf);

/** A number as it was typed, with its unit. */
function numberTex(number: Tree & { kind: 'number' }): Tex {
  if (number.text === 'pi') return { tex: '\\pi', binds: 'atom' };
  const digits = /^[\d.]*(?:e[+-]?\d+)?/i.exec(number.text)![0];
  const [mantissa, exponent] = digits.toLowerCase().split('e') as [string, string?];
  const scaled = exponent === undefined ? mantissa : `${mantissa} \\times 10^{${Number(exponent)}}`;
  if (!number.unit?.text) return figureTex(scaled);
  const gap = number.unit.text === '°' ? '' : '\\,';
  return { tex: `${scaled}${gap}${texUnit(number.unit.text)}`, binds: 'product', opens: 'figure', closes: 'unit' };
}
