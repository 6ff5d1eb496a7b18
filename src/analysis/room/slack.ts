import type { Box } from '../worst-case/box.ts';
import { prove } from '../worst-case/branch-and-bound.ts';
import { climb, type Point } from '../worst-case/corner.ts';
import type { BoardFunction, Ends } from '../worst-case/function.ts';

/** Where one variable may lie instead. */
export interface Change {
  readonly min: number;
  readonly max: number;
}

/** Parts of a box that are looked at to decide whether a check still holds; more than ever mattered on the demo boards. */
const budget = 400;

interface Part extends Ends {
  readonly start: Float64Array;
}

/** The least slack of one check as a function of a change to one variable that it depends on. */
export class SlackUnder {
  readonly #f: BoardFunction;
  readonly #at: number;
  readonly #parts: readonly Part[];

  /** @param worst  all variables: the worst corner as the board stands, a good place to start from */
  constructor(f: BoardFunction, variable: number, boxes: readonly Box[], worst: Float64Array) {
    this.#f = f;
    this.#at = f.variables.indexOf(variable);
    this.#parts = boxes.map((box) => {
      const { lo, hi } = f.argumentsOf(box);
      return { lo, hi, start: Float64Array.from(f.variables, (v, i) => Math.min(Math.max(worst[v]!, lo[i]!), hi[i]!)) };
    });
  }

  /** Fast, from corners alone: never less than the true least slack. */
  quick(change: Change): number {
    let least = Number.POSITIVE_INFINITY;
    for (const { lo, hi, start } of this.#parts) {
      lo[this.#at] = change.min;
      hi[this.#at] = change.max;
      for (const end of [change.min, change.max])
        least = Math.min(least, -climb(this.#f, lo, hi, start.with(this.#at, end), -1).value);
    }
    return least;
  }

  /** Whether the slack stays at or above zero everywhere, corners or not, as far as the budget goes. */
  holds(change: Change): boolean {
    const boxes = this.#parts.map(
      ({ lo, hi }): Ends => ({ lo: lo.with(this.#at, change.min), hi: hi.with(this.#at, change.max) }),
    );
    const start = this.#parts.map((part): Point => {
      const at = part.start.with(this.#at, change.min);
      return { at, value: -this.#f.value(at) };
    });
    return !(prove(this.#f, boxes, -1, start, { tolerance: 0, budget, enough: 0 }).best.value > 0);
  }
}
