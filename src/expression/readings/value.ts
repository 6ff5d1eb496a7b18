import { operationNamed } from '../operations/index.ts';
import { programOf } from '../program.ts';
import type { Tape } from '../tape.ts';
import type { Tree } from '../tree.ts';

/**
 * Every slot of `tape` for the given inputs, SI base units. NaN where an operation has no value there, such as the root
 * of a negative number.
 * @param into  an array to use again, as long as the tape has slots
 */
export function evaluate(tape: Tape, inputs: ArrayLike<number>, into?: Float64Array): Float64Array {
  const { steps, first, slots } = programOf(tape);
  const values = into ?? new Float64Array(slots);
  for (let i = 0; i < first; i++) values[i] = inputs[i]!;
  for (let s = 0; s < steps.length; s++) {
    const step = steps[s]!;
    if (step.operation === undefined) values[first + s] = step.constant;
    else {
      const { args, numbers } = step;
      for (let k = 0; k < args.length; k++) numbers[k] = values[args[k]!]!;
      values[first + s] = step.operation.value(numbers);
    }
  }
  return values;
}

/** Value of a single tree, SI base units; `lookup` gives the values of its names. */
export function evaluateTree(tree: Tree, lookup: (name: string) => number): number {
  if (tree.kind === 'number') return tree.value;
  if (tree.kind === 'symbol') return lookup(tree.name);
  const { pairwise, value } = operationNamed(tree.operation);
  const args = tree.args.map((arg) => evaluateTree(arg, lookup));
  if (!pairwise) return value(args);
  const join = operationNamed(pairwise);
  return args.reduce((a, b) => join.value([a, b]));
}
