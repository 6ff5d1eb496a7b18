import type { Interval } from '../interval.ts';
import { programOf } from '../program.ts';
import type { Tape } from '../tape.ts';

/**
 * A range for every slot of `tape` when each input may stand anywhere in its own. Always holds every value, and is wider
 * than need be where an input acts along several ways. `certain: false` where part of the inputs has no value.
 * @param into  an array to use again
 * @see IEEE 1788-2015, 9.1 (set-based; its decorations reduced to one flag)
 */
export function enclose(tape: Tape, inputs: readonly Interval[], into?: Interval[]): Interval[] {
  const { steps, first, slots } = programOf(tape);
  const ranges = into ?? new Array<Interval>(slots);
  for (let i = 0; i < first; i++) ranges[i] = inputs[i]!;
  for (let s = 0; s < steps.length; s++) {
    const step = steps[s]!;
    if (step.operation === undefined) ranges[first + s] = step.within;
    else {
      const { args, ranges: own } = step;
      for (let k = 0; k < args.length; k++) own[k] = ranges[args[k]!]!;
      ranges[first + s] = step.operation.range(own);
    }
  }
  return ranges;
}
