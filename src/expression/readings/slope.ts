import { programOf } from '../program.ts';
import type { Tape } from '../tape.ts';

/**
 * Slopes of one slot along every input, at the point whose values `evaluate` gave; backward along the tape, so that all
 * inputs cost about as much as one. SI base units of the slot over those of the input. At a kink, the slope of one side.
 * @example gradient(tape, evaluate(tape, [2, 3]), slotOfProduct) // [3, 2]
 */
export function gradient(tape: Tape, values: ArrayLike<number>, slot: number): Float64Array {
  const { steps, first } = programOf(tape);
  const along = new Float64Array(slot + 1);
  along[slot] = 1;
  for (let at = slot; at >= first; at--) {
    const push = along[at]!;
    if (push === 0) continue;
    const step = steps[at - first]!;
    if (step.operation === undefined) continue;
    const { args, numbers } = step;
    for (let k = 0; k < args.length; k++) numbers[k] = values[args[k]!]!;
    const slopes = step.operation.slope(numbers, values[at]!);
    for (let k = 0; k < args.length; k++) if (slopes[k] !== 0) along[args[k]!]! += push * slopes[k]!;
  }
  const gradient = new Float64Array(first);
  gradient.set(along.subarray(0, Math.min(first, slot + 1)));
  return gradient;
}
