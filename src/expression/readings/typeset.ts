import type { Tex } from '../operation.ts';
import { operationNamed } from '../operations/index.ts';
import { wrap } from '../tex.ts';
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
 * the second on; where it is no sum, the factors that a dot parts. Joined by a space they are the whole.
 * @example typesetTerms(parseExpression('a + b - c')) // ['a', '+ b', '- c']
 */
export function typesetTerms(tree: Tree, leaves: Leaves = {}): string[] {
  if (isSum(tree)) return termsOf(tree, leaves);
  const whole = typeset(tree, leaves);
  return whole.length > LONG_CALL && isExtreme(tree) ? atCommas(tree, leaves) : atDots(whole);
}

/** Characters of TeX beyond which the least or greatest of several terms is no longer one piece. */
const LONG_CALL = 90;

const isExtreme = (tree: Tree): tree is Tree & { kind: 'call' } =>
  tree.kind === 'call' && (tree.operation === 'min' || tree.operation === 'max');

/** Cut behind each comma. The brackets do not grow, since they open and close in different pieces. */
function atCommas(tree: Tree & { kind: 'call' }, leaves: Leaves): string[] {
  const args = tree.args.map((arg) => texOf(arg, leaves).tex);
  return args.map((tex, i) => `${i === 0 ? `\\${tree.operation}(` : ''}${tex}${i === args.length - 1 ? ')' : ','}`);
}

/** Cuts TeX of ours before each dot that stands in no bracket. */
function atDots(tex: string): string[] {
  const pieces: string[] = [];
  let depth = 0;
  let from = 0;
  for (const { 0: token, index } of tex.matchAll(/\\[a-zA-Z]+|\\.|[{}()]/g)) {
    if (token === '{' || token === '(' || token === '\\left' || token === '\\begin') depth++;
    else if (token === '}' || token === ')' || token === '\\right' || token === '\\end') depth--;
    else if (token === '\\cdot' && depth === 0) {
      pieces.push(tex.slice(from, index - 1));
      from = index;
    }
  }
  return [...pieces, tex.slice(from)];
}

const SIGNS: Readonly<Record<string, string>> = { add: '+', subtract: '-', sum: '+' };

const isSum = (tree: Tree): tree is Tree & { kind: 'call' } =>
  tree.kind === 'call' && SIGNS[tree.operation] !== undefined;

function termsOf(tree: Tree, leaves: Leaves): string[] {
  if (!isSum(tree)) return [wrap(texOf(tree, leaves), 'sum')];
  const [first, ...rest] = tree.args;
  const sign = SIGNS[tree.operation];
  return [...termsOf(first!, leaves), ...rest.map((arg) => `${sign} ${wrap(texOf(arg, leaves), 'product')}`)];
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
  if (tex.startsWith('-')) return { tex, binds: 'sum', opens: 'figure', minus: figureTex(tex.slice(1)) };
  if (/^[\d.{},]+$/.test(tex)) return { tex, binds: 'atom', opens: 'figure', closes: 'figure' };
  const compound = /\\[,;:]|\\(times|cdot|mathrm|text)\b|~|\\%|\\circ/.test(tex);
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
