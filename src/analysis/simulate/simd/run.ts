import { bracketed } from '../brackets.ts';
import { type Counts, chunk, type OutputCounts } from '../counts.ts';
import { Engine } from './engine.ts';
import { FirstBoards, type Plan } from './first-boards.ts';
import type { Machine } from './machine.ts';

/** Values of one output that were taken out of the machine. */
interface Kept {
  readonly values: Float64Array[];
  count: number;
}

/** A machine at work on boards, chunk by chunk, in any order. */
export class Run {
  readonly #trials: number;
  readonly #engine: Engine;
  readonly #first: FirstBoards;
  readonly #plans: readonly Plan[];
  readonly #kept: readonly Kept[];
  readonly #chunks: number[] = [];
  readonly #sums: Float64Array[] = [];
  #failed = 0;
  #seen = 0;

  constructor(machine: Machine, trials: number) {
    this.#trials = trials;
    this.#kept = Array.from({ length: machine.layout.outputs }, () => ({ values: [], count: 0 }));
    this.#engine = new Engine(machine, (k) => this.#take(k));
    this.#first = new FirstBoards(this.#engine, trials);
    this.#plans = this.#first.plans;
  }

  /** Counts the boards of a chunk. */
  count(index: number): void {
    const boards = Math.min(chunk, this.#trials - index * chunk);
    this.#engine.eachBlock(index * chunk, boards, (from, size) => {
      if (!this.#first.restore(from)) this.#engine.run(from);
      this.#failed += this.#engine.count(size);
    });
    this.#seen += boards;
    this.#chunks.push(index);
    this.#sums.push(Float64Array.from(this.#plans.flatMap((_, k) => this.#engine.tallies.takeSums(k))));
    this.#narrow();
  }

  /** What was counted on all chunks so far. The run is over with it. */
  finish(): Counts {
    const { tallies } = this.#engine;
    const outputs = this.#plans.map(({ grid, shift, flags }, k): OutputCounts => {
      const [min, max] = tallies.extremes(k);
      const failures = tallies.failures(k);
      const bins = tallies.counts(k).slice();
      this.#take(k);
      if (this.#seen === this.#trials) this.#sift(k, bins);
      return { grid, shift, min, max, failures, bins, flags, kept: this.#kept[k]!.values };
    });
    return { chunks: this.#chunks, sums: this.#sums, failed: this.#failed, outputs };
  }

  /** Takes kept values out of the machine; gives up where nearly all values fall into a few bins. */
  #take(k: number): void {
    const kept = this.#kept[k]!;
    const values = this.#engine.tallies.takeKept(k);
    if (values.length > 0) kept.values.push(values);
    kept.count += values.length;
    if (kept.count <= 16_384 + this.#trials / 8) return;
    this.#unflag(k, new Uint8Array(this.#plans[k]!.flags.length));
    kept.values.length = 0;
  }

  /**
   * The more boards were seen, the better is known where the quantiles lie: after 1, 4, 16, … chunks fewer bins are
   * kept.
   */
  #narrow(): void {
    if (!Number.isInteger(Math.log2(this.#chunks.length) / 2)) return;
    for (const k of this.#plans.keys())
      this.#unflag(k, bracketed(this.#engine.tallies.counts(k), this.#seen, this.#trials));
  }

  /**
   * When all boards were seen, leaves of the values kept those in the very bins that are needed. What was counted must
   * have been read, for they are counted again.
   */
  #sift(k: number, bins: Uint32Array): void {
    this.#unflag(k, bracketed(bins, this.#trials, this.#trials));
    const { values } = this.#kept[k]!;
    values.push(...values.splice(0).map((some) => this.#engine.countAgain(k, some)));
  }

  /** Keeps values in fewer bins from now on. */
  #unflag(k: number, still: Uint8Array): void {
    const { flags } = this.#plans[k]!;
    for (let bin = 0; bin < flags.length; bin++) flags[bin]! &= still[bin]!;
    this.#engine.tallies.setFlags(k, flags);
  }
}
