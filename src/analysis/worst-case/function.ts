import type { Interval } from '../../expression/interval.ts';
import { type Program, programOf } from '../../expression/program.ts';
import { pruned } from '../../expression/prune.ts';
import { RangeList } from '../../expression/range-list.ts';
import { encloseSteps } from '../../expression/readings/enclose.ts';
import { gradient } from '../../expression/readings/slope.ts';
import { slopeRanges } from '../../expression/readings/slope-range.ts';
import { evaluate } from '../../expression/readings/value.ts';
import type { Tape } from '../../expression/tape.ts';

/** Where the arguments of a function may lie: the ends of each. */
export interface Ends {
  readonly lo: Float64Array;
  readonly hi: Float64Array;
}

/** One result as a function of just the variables that it depends on, with the three questions a search asks of it. */
export class BoardFunction {
  /** Index of each argument among all variables of the board. */
  readonly variables: readonly number[];
  readonly #tape: Tape;
  readonly #program: Program;
  readonly #slot: number;
  readonly #values: Float64Array;
  readonly #along: Float64Array;
  #lists: { readonly ranges: RangeList; readonly slopes: RangeList } | undefined;

  constructor(tape: Tape, slot: number) {
    const part = pruned(tape, [slot]);
    this.#tape = part.tape;
    this.#program = programOf(part.tape);
    this.#slot = part.outputs[0]!;
    this.variables = part.inputs;
    this.#values = new Float64Array(this.#program.slots);
    this.#along = new Float64Array(this.#program.slots);
  }

  /** A box over all variables of the board as one over the arguments. */
  argumentsOf({ lo, hi }: Ends): Ends {
    return {
      lo: Float64Array.from(this.variables, (v) => lo[v]!),
      hi: Float64Array.from(this.variables, (v) => hi[v]!),
    };
  }

  value(at: Float64Array): number {
    return evaluate(this.#tape, at, this.#values)[this.#slot]!;
  }

  /** Valid until the next question. */
  slopes(at: Float64Array): Float64Array {
    this.value(at);
    return this.slopesThere();
  }

  /** The slopes at the point whose value was asked for last; valid until the next question. */
  slopesThere(): Float64Array {
    return gradient(this.#tape, this.#values, this.#slot, this.#along);
  }

  range({ lo, hi }: Ends): Interval {
    this.#lists ??= { ranges: new RangeList(this.#program.slots), slopes: new RangeList(this.#program.slots) };
    const { ranges } = this.#lists;
    ranges.lo.set(lo);
    ranges.hi.set(hi);
    encloseSteps(this.#program, ranges);
    return ranges.at(this.#slot);
  }

  /** The range over the box, and the ranges of the slopes along each argument; these are valid until they are asked for again. */
  rangeAndSlopes(box: Ends): { range: Interval; slopes: RangeList } {
    const range = this.range(box);
    const { ranges, slopes } = this.#lists!;
    slopeRanges(this.#program, ranges, this.#slot, slopes);
    return { range, slopes };
  }
}
