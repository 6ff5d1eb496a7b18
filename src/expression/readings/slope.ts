import { ADD, CONSTANT, DIVIDE, MULTIPLY, NEGATE, type ProgramStep, programOf, SUBTRACT } from '../program.ts';
import type { Tape } from '../tape.ts';

/**
 * Slopes of one slot along every input, at the point whose values `evaluate` gave; backward along the tape, so that all
 * inputs cost about as much as one. SI base units of the slot over those of the input. At a kink, the slope of one side.
 * @param into  an array to use again, as long as the tape has slots; the first of it are the inputs' slopes
 * @example gradient(tape, evaluate(tape, [2, 3]), slotOfProduct) // [3, 2]
 */
export function gradient(tape: Tape, values: Float64Array, slot: number, into?: Float64Array): Float64Array {
  const { steps, first, slots, codes, left, right } = programOf(tape);
  const along = into ?? new Float64Array(slots);
  along.fill(0, 0, Math.max(slot + 1, first));
  along[slot] = 1;
  for (let at = slot; at >= first; at--) {
    const push = along[at]!;
    if (push === 0) continue;
    const a = left[at - first]!;
    const b = right[at - first]!;
    switch (codes[at - first]!) {
      case CONSTANT:
        break;
      case ADD:
        along[a]! += push;
        along[b]! += push;
        break;
      case SUBTRACT:
        along[a]! += push;
        along[b]! -= push;
        break;
      case MULTIPLY:
        pass(along, a, push, values[b]!);
        pass(along, b, push, values[a]!);
        break;
      case DIVIDE:
        pass(along, a, push, 1 / values[b]!);
        pass(along, b, push, -values[at]! / values[b]!);
        break;
      case NEGATE:
        along[a]! -= push;
        break;
      default:
        passAll(along, steps[at - first]!, push, values, at);
    }
  }
  return along.subarray(0, first);
}

/** A flat argument takes nothing, however steep what follows is. */
function pass(along: Float64Array, arg: number, push: number, slope: number): void {
  if (slope !== 0) along[arg]! += push * slope;
}

function passAll(along: Float64Array, step: ProgramStep, push: number, values: Float64Array, at: number): void {
  if (step.operation === undefined) return;
  const { args, numbers, operation } = step;
  for (let k = 0; k < args.length; k++) numbers[k] = values[args[k]!]!;
  const slopes = operation.slope(numbers, values[at]!);
  for (let k = 0; k < args.length; k++) pass(along, args[k]!, push, slopes[k]!);
}
