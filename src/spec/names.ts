import type { Tree } from '../expression/tree.ts';
import type { TextProblem } from '../quantity/text-problem.ts';
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
 * @param own  symbols that the circuit has
 * @param everywhere  ids of the board
 * @param excused  whether a name may belong to something that could not be read; it then stands for itself
 */
export function scopeOf(
  circuit: string,
  own: ReadonlySet<string>,
  everywhere: ReadonlySet<string>,
  excused: (name: string) => boolean = () => false,
): Scope {
  return {
    find: (name) => (own.has(name) ? `${circuit}.${name}` : everywhere.has(name) || excused(name) ? name : undefined),
    known: () => [...own, ...everywhere],
  };
}

/**
 * The scope inside the value of one symbol. A value cannot follow from itself, so there its own name means the condition of
 * the board: `f_e: f_e` gives a circuit the condition `f_e`.
 */
export function scopeWithin(symbol: string, scope: Scope, conditions: ReadonlySet<string>): Scope {
  if (!conditions.has(symbol)) return scope;
  return { ...scope, find: (name) => (name === symbol ? symbol : scope.find(name)) };
}

/** The tree with every name replaced by the id it stands for; names that are unknown stay, and each is reported. */
export function resolved(tree: Tree, scope: Scope, report: (problem: TextProblem) => void): Tree {
  switch (tree.kind) {
    case 'number':
      return tree;
    case 'symbol': {
      const id = scope.find(tree.name);
      if (id !== undefined) return { ...tree, name: id };
      report({
        code: 'unknown-name',
        ...tree.at,
        found: `the name \`${tree.name}\``,
        expected: 'a symbol of this circuit, a condition of the board, or `circuit.symbol`',
        ...meant(tree.name, scope.known()),
      });
      return tree;
    }
    case 'call':
      return { ...tree, args: tree.args.map((arg) => resolved(arg, scope, report)) };
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
