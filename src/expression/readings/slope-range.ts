import type { Interval } from '../interval.ts';
import { programOf } from '../program.ts';
import { addRanges, multiplyRanges, ONE, ZERO } from '../ranges.ts';
import type { Tape } from '../tape.ts';

/**
 * Ranges of the slopes of one slot along every input, over the box whose ranges `enclose` gave. They hold every slope
 * between two points of the box (at kinks and jumps too: a jump has the slope ±∞), so f(y) − f(x) lies in Σ slope·(y − x),
 * and a slope that keeps its sign proves which end of the input is worst.
 * `certain: false` where the function is not everywhere defined over the box.
 */
export function gradientRange(tape: Tape, ranges: readonly Interval[], slot: number): Interval[] {
  const { steps, first } = programOf(tape);
  const along = new Array<Interval>(Math.max(slot + 1, first)).fill(ZERO);
  along[slot] = ONE;
  for (let at = slot; at >= first; at--) {
    const push = along[at]!;
    if (push.lo === 0 && push.hi === 0) continue;
    const step = steps[at - first]!;
    if (step.operation === undefined) continue;
    const { args, ranges: own } = step;
    for (let k = 0; k < args.length; k++) own[k] = ranges[args[k]!]!;
    const slopes = step.operation.slopeRange(own, ranges[at]!);
    for (let k = 0; k < args.length; k++) {
      const part = push === ONE ? slopes[k]! : multiplyRanges(push, slopes[k]!);
      const sofar = along[args[k]!]!;
      along[args[k]!] = sofar === ZERO ? part : addRanges(sofar, part);
    }
  }
  along.length = first;
  return along;
}
