import type { Interval } from '../../expression/interval.ts';
import { pruned } from '../../expression/prune.ts';
import { enclose } from '../../expression/readings/enclose.ts';
import { gradient } from '../../expression/readings/slope.ts';
import { gradientRange } from '../../expression/readings/slope-range.ts';
import { evaluate } from '../../expression/readings/value.ts';
import type { Tape } from '../../expression/tape.ts';

/** One result as a function of just the variables that it depends on, with the three questions a search asks of it. */
export class BoardFunction {
  /** Index of each argument among all variables of the board. */
  readonly variables: readonly number[];
  readonly #tape: Tape;
  readonly #slot: number;
  readonly #values: Float64Array;
  readonly #ranges: Interval[] = [];

  constructor(tape: Tape, slot: number) {
    const part = pruned(tape, [slot]);
    this.#tape = part.tape;
    this.#slot = part.outputs[0]!;
    this.variables = part.inputs;
    this.#values = new Float64Array(part.tape.inputs.length + part.tape.steps.length);
  }

  value(at: Float64Array): number {
    return evaluate(this.#tape, at, this.#values)[this.#slot]!;
  }

  slopes(at: Float64Array): Float64Array {
    this.value(at);
    return this.slopesThere();
  }

  /** The slopes at the point whose value was asked for last. */
  slopesThere(): Float64Array {
    return gradient(this.#tape, this.#values, this.#slot);
  }

  range(box: readonly Interval[]): Interval {
    return enclose(this.#tape, box, this.#ranges)[this.#slot]!;
  }

  /** The range over the box, and the ranges of the slopes along each argument. */
  rangeAndSlopes(box: readonly Interval[]): { range: Interval; slopes: Interval[] } {
    const ranges = enclose(this.#tape, box, this.#ranges);
    return { range: ranges[this.#slot]!, slopes: gradientRange(this.#tape, ranges, this.#slot) };
  }
}
