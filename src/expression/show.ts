import type { Tree } from './tree.ts';

const SIGNS: Readonly<Record<string, readonly [sign: string, binds: number]>> = {
  less: ['<', 1],
  lessEqual: ['<=', 1],
  greater: ['>', 1],
  greaterEqual: ['>=', 1],
  add: ['+', 2],
  subtract: ['-', 2],
  multiply: ['*', 3],
  divide: ['/', 3],
  power: ['^', 5],
};

/**
 * The text of a tree, with no more brackets than it needs: for messages, where the typed text is not at hand. It reads
 * back as the same tree.
 * @example show(parseExpression('((a)+b)*2')) // '(a + b) * 2'
 */
export function show(tree: Tree): string {
  return shown(tree, 0);
}

function shown(tree: Tree, needs: number): string {
  if (tree.kind === 'number') return tree.text;
  if (tree.kind === 'symbol') return tree.name;
  if (tree.operation === 'negate') return bracketed(`-${shown(tree.args[0]!, 4)}`, needs > 2);
  const sign = SIGNS[tree.operation];
  if (!sign) return `${tree.operation}(${tree.args.map(show).join(', ')})`;
  const [text, binds] = sign;
  const [left, right] = tree.operation === 'power' ? [binds + 1, binds] : [binds, binds + 1];
  const gap = tree.operation === 'power' ? '' : ' ';
  return bracketed(shown(tree.args[0]!, left) + gap + text + gap + shown(tree.args[1]!, right), needs > binds);
}

const bracketed = (text: string, needed: boolean): string => (needed ? `(${text})` : text);
