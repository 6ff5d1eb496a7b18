import type { Counts } from '../analysis/simulate/counts.ts';
import type { Machine } from '../analysis/simulate/simd/machine.ts';
import { Run } from '../analysis/simulate/simd/run.ts';

/** What every thread of a simulation is given. */
export interface SharedTask {
  readonly machine: Machine;
  readonly trials: number;
  readonly chunks: number;
  /** Shared by all threads: the next chunk to be taken, and how many threads have answered. */
  readonly pile: Int32Array;
}

/** Counts chunks from the pile until none is left. */
export function takeChunks({ machine, trials, chunks, pile }: SharedTask): Counts {
  const run = new Run(machine, trials);
  for (let index = Atomics.add(pile, 0, 1); index < chunks; index = Atomics.add(pile, 0, 1)) run.count(index);
  return run.finish();
}
