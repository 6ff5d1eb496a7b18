import type { Interval } from '../interval.ts';
import {
  ADD,
  CONSTANT,
  DIVIDE,
  MULTIPLY,
  NEGATE,
  type Program,
  type ProgramStep,
  programOf,
  SUBTRACT,
} from '../program.ts';
import { RangeList } from '../range-list.ts';
import { productHigh, productLow, quotientDown, quotientUp } from '../ranges.ts';
import { addDown, addUp } from '../rounding.ts';
import type { Tape } from '../tape.ts';

/**
 * Ranges of the slopes of one slot along every input, over the box whose ranges `enclose` gave. They hold every slope
 * between two points of the box (at kinks and jumps too: a jump has the slope ±∞), so f(y) − f(x) lies in Σ slope·(y − x),
 * and a slope that keeps its sign proves which end of the input is worst.
 * `certain: false` where the function is not everywhere defined over the box.
 */
export function gradientRange(tape: Tape, ranges: readonly Interval[], slot: number): Interval[] {
  const program = programOf(tape);
  const along = new RangeList(program.slots);
  slopeRanges(program, RangeList.of(ranges), slot, along);
  return along.all().slice(0, program.first);
}

/** The same into a list as long as the tape has slots: its first are the slopes along the inputs. */
export function slopeRanges(program: Program, ranges: RangeList, slot: number, along: RangeList): void {
  const { steps, first, codes, left, right } = program;
  const { lo, hi, certain } = ranges;
  const end = Math.max(slot + 1, first);
  along.lo.fill(0, 0, end);
  along.hi.fill(0, 0, end);
  along.certain.fill(1, 0, end);
  along.put(slot, 1, 1, 1);
  for (let at = slot; at >= first; at--) {
    const low = along.lo[at]!;
    const high = along.hi[at]!;
    if (low === 0 && high === 0) continue;
    const sure = along.certain[at]!;
    const a = left[at - first]!;
    const b = right[at - first]!;
    switch (codes[at - first]!) {
      case CONSTANT:
        break;
      case ADD:
        gather(along, a, low, high, sure);
        gather(along, b, low, high, sure);
        break;
      case SUBTRACT:
        gather(along, a, low, high, sure);
        gather(along, b, -high, -low, sure);
        break;
      case MULTIPLY:
        gatherProduct(along, a, low, high, sure, lo[b]!, hi[b]!, certain[b]!);
        gatherProduct(along, b, low, high, sure, lo[a]!, hi[a]!, certain[a]!);
        break;
      case NEGATE:
        gather(along, a, -high, -low, sure);
        break;
      case DIVIDE:
        if (lo[b]! > 0) gatherQuotient(along, a, b, ranges, at);
        else gatherCall(along, steps[at - first]!, low, high, sure, ranges, at);
        break;
      default:
        gatherCall(along, steps[at - first]!, low, high, sure, ranges, at);
    }
  }
}

function gather(along: RangeList, arg: number, lo: number, hi: number, certain: number): void {
  const { lo: lows, hi: highs } = along;
  // The first to come is taken as it is, so that adding to nothing costs no rounding.
  const none = lows[arg] === 0 && highs[arg] === 0;
  lows[arg] = none ? lo : addDown(lows[arg]!, lo);
  highs[arg] = none ? hi : addUp(highs[arg]!, hi);
  along.certain[arg]! &= certain;
}

function gatherProduct(
  along: RangeList,
  arg: number,
  lo: number,
  hi: number,
  certain: number,
  slopeLo: number,
  slopeHi: number,
  slopeCertain: number,
): void {
  // The slope at the slot itself is exactly 1.
  if (lo === 1 && hi === 1) gather(along, arg, slopeLo, slopeHi, certain & slopeCertain);
  else
    gather(
      along,
      arg,
      productLow(lo, hi, slopeLo, slopeHi),
      productHigh(lo, hi, slopeLo, slopeHi),
      certain & slopeCertain,
    );
}

/** 1/b along a, and −(a/b)/b along b, for b above zero. */
function gatherQuotient(along: RangeList, a: number, b: number, { lo, hi, certain }: RangeList, at: number): void {
  const low = along.lo[at]!;
  const high = along.hi[at]!;
  const sure = along.certain[at]!;
  const least = lo[b]!;
  const greatest = hi[b]!;
  gatherProduct(along, a, low, high, sure, quotientDown(1, greatest), quotientUp(1, least), certain[b]!);
  const falls = quotientUp(hi[at]!, hi[at]! <= 0 ? greatest : least);
  const rises = quotientDown(lo[at]!, lo[at]! >= 0 ? greatest : least);
  gatherProduct(along, b, low, high, sure, -falls, -rises, certain[at]! & certain[b]!);
}

function gatherCall(
  along: RangeList,
  step: ProgramStep,
  lo: number,
  hi: number,
  certain: number,
  ranges: RangeList,
  at: number,
): void {
  if (step.operation === undefined) return;
  const { args, ranges: own, operation } = step;
  for (let k = 0; k < args.length; k++) own[k] = ranges.at(args[k]!);
  const slopes = operation.slopeRange(own, ranges.at(at));
  for (let k = 0; k < args.length; k++) {
    const slope = slopes[k]!;
    gatherProduct(along, args[k]!, lo, hi, certain, slope.lo, slope.hi, slope.certain ? 1 : 0);
  }
}
