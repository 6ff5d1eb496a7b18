import type { Tree } from '../expression/tree.ts';
import { TextError } from '../quantity/text-problem.ts';
import { meant } from './schema-problems.ts';

/** What the symbols of one circuit stand for. */
export interface Scope {
  /** Id of what a name stands for, or undefined. */
  find(name: string): string | undefined;
  /** Names that could have been meant. */
  known(): Iterable<string>;
}

/**
 * Scope of a circuit: its own symbols first, then the conditions of the board, then `circuit.symbol` of others,
 * `derating.factor` and `board.total`.
 */
export function scopeOf(circuit: string | undefined, own: ReadonlySet<string>, everywhere: ReadonlySet<string>): Scope {
  return {
    find: (name) => (circuit && own.has(name) ? `${circuit}.${name}` : everywhere.has(name) ? name : undefined),
    known: () => [...own, ...everywhere],
  };
}

/** The tree with every name replaced by the id it stands for. Throws a TextError at the first name that is unknown. */
export function resolved(tree: Tree, scope: Scope): Tree {
  switch (tree.kind) {
    case 'number':
      return tree;
    case 'symbol': {
      const id = scope.find(tree.name);
      if (id !== undefined) return { ...tree, name: id };
      throw new TextError({
        code: 'unknown-name',
        ...tree.at,
        found: `the name \`${tree.name}\``,
        expected: 'a symbol of this circuit, a condition of the board, or `circuit.symbol`',
        ...meant(tree.name, scope.known()),
      });
    }
    case 'call':
      return { ...tree, args: tree.args.map((arg) => resolved(arg, scope)) };
    default:
      return tree satisfies never;
  }
}

/** Ids that a tree mentions, each once, in the order of mention. */
export function mentioned(tree: Tree, into: Set<string> = new Set()): Set<string> {
  if (tree.kind === 'symbol') into.add(tree.name);
  if (tree.kind === 'call') for (const arg of tree.args) mentioned(arg, into);
  return into;
}
