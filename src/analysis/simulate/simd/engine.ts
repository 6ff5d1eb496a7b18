import type { Machine, MachineExports } from './machine.ts';
import { started } from './start.ts';
import { Tallies } from './tallies.ts';
import { tallyLayout } from './tally-layout.ts';

/** A machine that was started, with views of what it keeps in its memory. */
export class Engine {
  readonly outputs: number;
  readonly tallies: Tallies;
  readonly #machine: Machine;
  readonly #exports: MachineExports;
  /** All output columns. */
  readonly #columns: Float64Array;
  readonly #marks: Int32Array;

  /** @param full  told the number of an output whose store of kept values must be emptied */
  constructor(machine: Machine, full: (output: number) => void) {
    const { columns, stride, outputs, tallies, failed, block } = machine.layout;
    this.#machine = machine;
    this.#exports = started(machine, (tally) => full((tally - tallies) / tallyLayout.size));
    const { buffer } = this.#exports.memory;
    this.outputs = outputs;
    this.tallies = new Tallies(machine.layout, buffer);
    this.#columns = new Float64Array(buffer, columns, (stride * outputs) / 8);
    this.#marks = new Int32Array(buffer, failed, 2 * block);
  }

  /** Goes over boards `first`, … block by block. */
  eachBlock(first: number, count: number, work: (from: number, boards: number) => void): void {
    const { block } = this.#machine.layout;
    for (let done = 0; done < count; done += block) work(first + done, Math.min(block, count - done));
  }

  /** Draws the block of boards from `from` on and computes their outputs. */
  run(from: number): void {
    this.#exports.draw(from);
    this.#exports.compute();
  }

  /** Outputs of the block, to be put back later. */
  save(): Float64Array {
    return this.#columns.slice();
  }
  restore(saved: Float64Array): void {
    this.#columns.set(saved);
  }

  /** Counts the first boards of the block. @returns on how many an output that decides failed */
  count(boards: number): number {
    if (!this.#exports.count(boards)) return 0;
    let failed = 0;
    for (let i = 0; i < boards; i++) if (this.#marks[2 * i] !== 0) failed++;
    this.#marks.fill(0);
    return failed;
  }

  /** Counts values that were kept of an output once more. @returns those that are kept again */
  countAgain(k: number, values: Float64Array): Float64Array {
    const { start, bytes } = this.tallies.fillStore(k, values);
    // In place: what is kept never overtakes what is still to be read.
    this.#exports.tally(start, bytes, this.tallies.address(k));
    return this.tallies.takeKept(k);
  }
}
