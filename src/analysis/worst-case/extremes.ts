import type { Box } from './box.ts';
import { prove } from './branch-and-bound.ts';
import { climb, flip, type Point } from './corner.ts';
import { definedOver } from './defined.ts';
import type { BoardFunction, Ends } from './function.ts';

/** The least or greatest value of a result: achieved at a point, and enclosed by a bound. SI base units. */
export interface Extreme {
  readonly value: number;
  readonly bound: number;
  /** All variables of the board; those that do not matter stand at typical. */
  readonly at: Float64Array;
  readonly case?: string;
  /** Value and bound agree to the tolerance. */
  readonly proven: boolean;
  /** False where the result is not defined, or a curve is left, somewhere in the box. */
  readonly certain: boolean;
}

export interface SearchOptions {
  /** Of the range between the extremes. */
  readonly tolerance: number;
  /** Parts of the boxes that may be looked at for each extreme. */
  readonly budget: number;
}
export const usualSearch: SearchOptions = { tolerance: 1e-6, budget: 6000 };

/** The search for the worst case of one result over every box. */
export class Search {
  readonly f: BoardFunction;
  readonly #typical: Float64Array;
  readonly #parts: readonly Part[];
  readonly #climbed: readonly { up: Point; down: Point }[];
  readonly #tolerance: number;
  readonly #budget: number;
  #isDefined: boolean | undefined;

  constructor(f: BoardFunction, boxes: readonly Box[], typical: Float64Array, { tolerance, budget } = usualSearch) {
    this.f = f;
    this.#typical = typical;
    this.#budget = budget;
    const start = Float64Array.from(this.f.variables, (v) => typical[v]!);
    this.#parts = boxes.map((box) => partOf(this.f, box, start));
    this.#climbed = this.#parts.map((part) => ({ up: this.#corner(part, 1), down: this.#corner(part, -1) }));
    const highest = Math.max(...this.#climbed.map(({ up }) => up.value));
    const lowest = -Math.max(...this.#climbed.map(({ down }) => down.value));
    const finite = (x: number) => (Number.isFinite(x) ? x : 0);
    // What the result's own rounding blurs cannot be told apart by any search.
    this.#tolerance = Math.max(
      tolerance * finite(highest - lowest),
      1e-14 * finite(Math.max(Math.abs(highest), Math.abs(lowest))),
    );
  }

  #corner(part: Part, sense: 1 | -1): Point {
    const climbed = climb(this.f, part.lo, part.hi, part.start, sense);
    // At a kink or a flat spot no slope leads anywhere.
    return climbed.at === part.start ? flip(this.f, part.lo, part.hi, climbed, sense) : climbed;
  }

  min(): Extreme {
    return this.#extreme(-1);
  }

  max(): Extreme {
    return this.#extreme(1);
  }

  /** Asked once for both ends, and only where it is not plain from the start. */
  #defined(): boolean {
    this.#isDefined ??= this.#parts.every((part) => definedOver(this.f, part));
    return this.#isDefined;
  }

  #extreme(sense: 1 | -1): Extreme {
    const start = this.#climbed.map(({ up, down }) => (sense === 1 ? up : down));
    const { best, from, bound } = prove(this.f, this.#parts, sense, start, {
      tolerance: this.#tolerance,
      budget: this.#budget,
    });
    const part = this.#parts[from]!;
    const at = this.#typical.slice();
    this.f.variables.forEach((v, i) => {
      at[v] = best.at[i]!;
    });
    return {
      value: sense * best.value,
      bound: sense * bound,
      at,
      // Twice the tolerance: the part dropped last and the best value may each be one tolerance off.
      proven: bound - best.value <= 2 * this.#tolerance,
      certain: this.#defined(),
      ...(part.name === undefined ? {} : { case: part.name }),
    };
  }
}

interface Part extends Ends {
  readonly name?: string;
  readonly start: Float64Array;
}

function partOf(f: BoardFunction, box: Box, start: Float64Array): Part {
  const { lo, hi } = f.argumentsOf(box);
  return {
    lo,
    hi,
    start: start.map((x, i) => Math.min(Math.max(x, lo[i]!), hi[i]!)),
    ...(box.name === undefined ? {} : { name: box.name }),
  };
}
