import { operationNamed } from '../operations/index.ts';
import { ADD, DIVIDE, MULTIPLY, NEGATE, type ProgramStep, programOf, SUBTRACT } from '../program.ts';
import type { Tape } from '../tape.ts';
import type { Tree } from '../tree.ts';

/**
 * Every slot of `tape` for the given inputs, SI base units. NaN where an operation has no value there, such as the root
 * of a negative number.
 * @param into  an array to use again, as long as the tape has slots
 */
export function evaluate(tape: Tape, inputs: ArrayLike<number>, into?: Float64Array): Float64Array {
  const { steps, first, slots, codes, left, right } = programOf(tape);
  const values = into ?? new Float64Array(slots);
  for (let i = 0; i < first; i++) values[i] = inputs[i]!;
  for (let s = 0; s < steps.length; s++) {
    const at = first + s;
    switch (codes[s]!) {
      case ADD:
        values[at] = values[left[s]!]! + values[right[s]!]!;
        break;
      case SUBTRACT:
        values[at] = values[left[s]!]! - values[right[s]!]!;
        break;
      case MULTIPLY:
        values[at] = values[left[s]!]! * values[right[s]!]!;
        break;
      case DIVIDE:
        values[at] = values[left[s]!]! / values[right[s]!]!;
        break;
      case NEGATE:
        values[at] = -values[left[s]!]!;
        break;
      default:
        values[at] = stepValue(steps[s]!, values);
    }
  }
  return values;
}

function stepValue(step: ProgramStep, values: Float64Array): number {
  if (step.operation === undefined) return step.constant;
  const { args, numbers, operation } = step;
  for (let k = 0; k < args.length; k++) numbers[k] = values[args[k]!]!;
  return operation.value(numbers);
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
