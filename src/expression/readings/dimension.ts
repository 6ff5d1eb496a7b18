import { type Dimension, pureNumber } from '../../quantity/dimension.ts';
import { TextError } from '../../quantity/text-problem.ts';
import { DimensionError } from '../dimension-error.ts';
import type { Operand } from '../operation.ts';
import { operationNamed } from '../operations/index.ts';
import { show } from '../show.ts';
import type { Span, Tree } from '../tree.ts';
import { evaluateTree } from './value.ts';

/**
 * The dimension of `tree`, or `truth` for a comparison; before anything is calculated.
 * @param lookup  dimension of a name; undefined where nothing is called so
 * @throws TextError `units-disagree` at the argument at fault, naming both sides; `unknown-name`
 * @example dimensionOf(parseExpression('V_in + 2 A'), voltages) // throws: found `2 A`, a current; expected a voltage, as `V_in` is
 */
export function dimensionOf(tree: Tree, lookup: (name: string) => Dimension | undefined): Dimension | 'truth' {
  return operandOf(tree, lookup).dimension;
}

function operandOf(tree: Tree, lookup: (name: string) => Dimension | undefined): Operand {
  switch (tree.kind) {
    case 'number':
      return { dimension: tree.unit?.dimension ?? pureNumber, constant: tree.value, text: tree.text };
    case 'symbol': {
      const dimension = lookup(tree.name);
      if (dimension) return { dimension, text: tree.name };
      throw new TextError({
        code: 'unknown-name',
        ...tree.at,
        found: `the name \`${tree.name}\``,
        expected: 'a symbol that is defined',
      });
    }
    case 'call':
      return operandOfCall(tree, lookup);
    default:
      return tree satisfies never;
  }
}

function operandOfCall(tree: Tree & { kind: 'call' }, lookup: (name: string) => Dimension | undefined): Operand {
  const args = tree.args.map((arg) => operandOf(arg, lookup));
  try {
    const dimension = operationNamed(tree.operation).dimension(args);
    const text = show(tree);
    if (args.some((arg) => arg.constant === undefined)) return { dimension, text };
    return { dimension, text, constant: evaluateTree(tree, () => Number.NaN) };
  } catch (error) {
    if (error instanceof DimensionError) throw placed(error, tree.args[error.facts.argument]!.at);
    throw error;
  }
}

function placed({ facts }: DimensionError, at: Span): TextError {
  const { found, expected, hint } = facts;
  return new TextError({ code: 'units-disagree', ...at, found, expected, ...(hint ? { hint } : {}) });
}
