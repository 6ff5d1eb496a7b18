import { bracketed } from '../brackets.ts';
import { type Grid, gridOver } from '../grid.ts';
import type { Engine } from './engine.ts';

/** How one output is counted. */
export interface Plan {
  readonly grid: Grid | undefined;
  readonly shift: number;
  /** 1 for bins of which every value is kept. */
  readonly flags: Uint8Array;
}

/** Boards that are looked at for the ranges of the outputs, and for where their quantiles are. */
const forRanges = 1024;
const forQuantiles = 4096;

/** The first boards, which are looked at before any is counted. They are the same for every run. */
export class FirstBoards {
  readonly plans: readonly Plan[];
  readonly #engine: Engine;
  readonly #trials: number;
  /** Saved outputs by the first board of the block. */
  readonly #blocks = new Map<number, Float64Array>();

  constructor(engine: Engine, trials: number) {
    this.#engine = engine;
    this.#trials = trials;
    engine.eachBlock(0, Math.min(forQuantiles, trials), (from) => {
      engine.run(from);
      this.#blocks.set(from, engine.save());
    });
    const ranges = this.#ranges();
    this.plans = this.#flagged(ranges);
  }

  /** Puts the outputs of a block in place. @returns false where they were not looked at */
  restore(from: number): boolean {
    const saved = this.#blocks.get(from);
    if (saved) this.#engine.restore(saved);
    return saved !== undefined;
  }

  /** Counts some of the boards. @returns how many */
  #count(atMost: number): number {
    const boards = Math.min(atMost, this.#trials);
    this.#engine.eachBlock(0, boards, (from, size) => {
      this.restore(from);
      this.#engine.count(size);
    });
    return boards;
  }

  #ranges(): Omit<Plan, 'flags'>[] {
    const boards = this.#count(forRanges);
    const { tallies } = this.#engine;
    return Array.from({ length: this.#engine.outputs }, (_, k) => {
      const [min, max] = tallies.extremes(k);
      const grid = gridOver(min, max, tallies.takeSums(k)[0] / boards);
      const shift = grid?.shift ?? (Number.isFinite(min) ? min : 0);
      tallies.setGrid(k, grid ?? { shift, scale: 0, offset: 0 });
      tallies.clear(k);
      return { grid, shift };
    });
  }

  #flagged(ranges: readonly Omit<Plan, 'flags'>[]): Plan[] {
    const boards = this.#count(forQuantiles);
    const { tallies } = this.#engine;
    return ranges.map((range, k) => {
      const flags = bracketed(tallies.counts(k), boards, this.#trials);
      tallies.clear(k);
      tallies.setFlags(k, flags);
      return { ...range, flags };
    });
  }
}
