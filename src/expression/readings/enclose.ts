import type { Interval } from '../interval.ts';
import { ADD, DIVIDE, MULTIPLY, NEGATE, type Program, type ProgramStep, programOf, SUBTRACT } from '../program.ts';
import { RangeList } from '../range-list.ts';
import { productHigh, productLow, quotientDown, quotientUp } from '../ranges.ts';
import { addDown, addUp } from '../rounding.ts';
import type { Tape } from '../tape.ts';

/**
 * A range for every slot of `tape` when each input may stand anywhere in its own. Always holds every value, and is wider
 * than need be where an input acts along several ways. `certain: false` where part of the inputs has no value.
 * @see IEEE 1788-2015, 9.1 (set-based; its decorations reduced to one flag)
 */
export function enclose(tape: Tape, inputs: readonly Interval[]): Interval[] {
  const program = programOf(tape);
  const ranges = new RangeList(program.slots);
  for (let i = 0; i < program.first; i++) ranges.set(i, inputs[i]!);
  encloseSteps(program, ranges);
  return ranges.all();
}

/** The same on a list as long as the tape has slots, of which the inputs are set. */
export function encloseSteps(program: Program, ranges: RangeList): void {
  const { steps, first, codes, left, right } = program;
  const { lo, hi, certain } = ranges;
  for (let s = 0; s < codes.length; s++) {
    const at = first + s;
    const a = left[s]!;
    const b = right[s]!;
    switch (codes[s]!) {
      case ADD:
        ranges.put(at, addDown(lo[a]!, lo[b]!), addUp(hi[a]!, hi[b]!), certain[a]! & certain[b]!);
        break;
      case SUBTRACT:
        ranges.put(at, addDown(lo[a]!, -hi[b]!), addUp(hi[a]!, -lo[b]!), certain[a]! & certain[b]!);
        break;
      case MULTIPLY:
        ranges.put(
          at,
          productLow(lo[a]!, hi[a]!, lo[b]!, hi[b]!),
          productHigh(lo[a]!, hi[a]!, lo[b]!, hi[b]!),
          certain[a]! & certain[b]!,
        );
        break;
      case DIVIDE:
        if (lo[b]! > 0) {
          const low = quotientDown(lo[a]!, lo[a]! >= 0 ? hi[b]! : lo[b]!);
          const high = quotientUp(hi[a]!, hi[a]! <= 0 ? hi[b]! : lo[b]!);
          ranges.put(at, low, high, certain[a]! & certain[b]!);
        } else encloseCall(steps[s]!, ranges, at);
        break;
      case NEGATE:
        ranges.put(at, -hi[a]!, -lo[a]!, certain[a]!);
        break;
      default:
        encloseCall(steps[s]!, ranges, at);
    }
  }
}

function encloseCall(step: ProgramStep, ranges: RangeList, at: number): void {
  if (step.operation === undefined) {
    ranges.set(at, step.within);
    return;
  }
  const { args, ranges: own, operation } = step;
  for (let k = 0; k < args.length; k++) own[k] = ranges.at(args[k]!);
  ranges.set(at, operation.range(own));
}
