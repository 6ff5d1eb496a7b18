import type { Tape } from '../../expression/tape.ts';
import type { Box } from '../worst-case/box.ts';
import { climb } from '../worst-case/corner.ts';
import { Search } from '../worst-case/extremes.ts';
import type { BoardFunction } from '../worst-case/function.ts';

/** A change of one variable's range: where it may lie instead. */
export interface Change {
  readonly variable: number;
  readonly min: number;
  readonly typ: number;
  readonly max: number;
}

/** The least slack of one check as a function of a change to a part. */
export class SlackUnder {
  readonly #f: BoardFunction;
  readonly #tape: Tape;
  readonly #slot: number;
  readonly #boxes: readonly Box[];
  readonly #typical: Float64Array;

  /** The worst corner as the board stands: a good place to start from. */
  readonly #worst: Float64Array;

  constructor(
    f: BoardFunction,
    tape: Tape,
    slot: number,
    boxes: readonly Box[],
    typical: Float64Array,
    worst: Float64Array,
  ) {
    this.#f = f;
    this.#tape = tape;
    this.#slot = slot;
    this.#boxes = boxes;
    this.#typical = typical;
    this.#worst = worst;
  }

  /** Fast, from corners alone: never less than the true least slack. */
  quick(change: Change): number {
    const at = this.#f.variables.indexOf(change.variable);
    const worst = this.#boxes.map((box) => {
      const lo = Float64Array.from(this.#f.variables, (v) => box.lo[v]!).with(at, change.min);
      const hi = Float64Array.from(this.#f.variables, (v) => box.hi[v]!).with(at, change.max);
      const start = Float64Array.from(this.#f.variables, (v, i) => Math.min(Math.max(this.#worst[v]!, lo[i]!), hi[i]!));
      return Math.min(...[change.min, change.max].map((end) => -climb(this.#f, lo, hi, start.with(at, end), -1).value));
    });
    return Math.min(...worst);
  }

  /** With the proof. */
  proven(change: Change): number {
    const boxes = this.#boxes.map((box) => ({
      ...box,
      lo: box.lo.with(change.variable, change.min),
      hi: box.hi.with(change.variable, change.max),
    }));
    return new Search(this.#tape, this.#slot, boxes, this.#typical.with(change.variable, change.typ)).min().value;
  }
}
