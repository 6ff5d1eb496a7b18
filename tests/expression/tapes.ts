import type { Tape } from '../../src/expression/tape.ts';
import { TapeBuilder } from '../../src/expression/tape-builder.ts';
import type { Tree } from '../../src/expression/tree.ts';
import { names } from './arbitrary.ts';

/** A tape with the one output `tree`, its inputs in the order of `names`. */
export function tapeOf(
  tree: Tree,
  options: { simplify?: boolean } = {},
  inputs: readonly string[] = names,
): { tape: Tape; output: number } {
  const builder = new TapeBuilder(options);
  for (const name of inputs) builder.input(name);
  const { tape, outputs } = builder.finish([builder.tree(tree, (name) => builder.input(name))]);
  return { tape, output: outputs[0]! };
}
