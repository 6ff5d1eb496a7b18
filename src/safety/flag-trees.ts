import type { Tree } from '../expression/tree.ts';

/**
 * The tree with each fact as the comparison `fact > 0.5`, so that it counts as a truth wherever one is asked for.
 * @example show(withFacts(parseExpression('and(has_pack, P_sc > 1000 W)'), (name) => name === 'has_pack')) // 'and(has_pack > 0.5, P_sc > 1000 W)'
 */
export function withFacts(tree: Tree, isFlag: (name: string) => boolean): Tree {
  if (tree.kind === 'number') return tree;
  if (tree.kind === 'call') return { ...tree, args: tree.args.map((arg) => withFacts(arg, isFlag)) };
  if (!isFlag(tree.name)) return tree;
  const half: Tree = { kind: 'number', value: 0.5, text: '0.5', at: tree.at };
  return { kind: 'call', operation: 'greater', args: [tree, half], at: tree.at };
}

/** The fact that a comparison made by `withFacts` stands for, or undefined. */
export function factOf(tree: Tree, isFlag: (name: string) => boolean): string | undefined {
  const left = tree.kind === 'call' && tree.operation === 'greater' ? tree.args[0]! : undefined;
  return left?.kind === 'symbol' && isFlag(left.name) ? left.name : undefined;
}
