import { neededSlots } from '../../expression/prune.ts';
import { kernelOf } from '../../expression/readings/kernel.ts';
import type { Variable } from '../variable.ts';
import type { PartsTape } from './at-corners.ts';
import { sampler } from './sample.ts';
import { type Spread, spreadOf } from './spread.ts';

export interface SimulationOptions {
  readonly seed: number;
  /** Simulated boards. */
  readonly trials: number;
}

export interface Simulation {
  /** One for each output of the tape. */
  readonly spreads: readonly Spread[];
  /** Boards on which the output was below zero, for outputs that are slacks; 0 for others. */
  readonly failures: readonly number[];
  /** Boards on which any slack that decides was below zero. */
  readonly failed: number;
}

/** For each output: whether it is a slack, of which boards below zero are counted, and whether it decides on the board. */
export interface Slacks {
  readonly counted: readonly boolean[];
  readonly decides: readonly boolean[];
}

/** Boards computed at a time: inputs and results of a block stay in the processor's cache. */
const block = 512;
/** Numbers kept at a time; beyond it the boards are drawn again for the next outputs, so that memory has a bound. */
const most = 32_000_000;

/** Draws every part once a board and computes every output from the same board. */
export function simulate(
  parts: PartsTape,
  variables: readonly Variable[],
  slacks: Slacks,
  options: SimulationOptions,
): Simulation {
  const { tape, outputs } = parts;
  const byId = new Map(variables.map((variable) => [variable.id, variable]));
  const samplers = tape.inputs.map((id) => sampler(byId.get(id)!, options.seed));
  const bad = new Uint8Array(options.trials);
  const spreads: Spread[] = [];
  const failures: number[] = [];
  const together = Math.max(1, Math.floor(most / options.trials));
  for (let first = 0; first < outputs.length; first += together) {
    const some = outputs.slice(first, first + together);
    const run = kernelOf(tape, some);
    const needed = neededSlots(tape, some);
    const inputs = tape.inputs.map((_, i) => new Float64Array(needed[i] ? block : 0));
    const results = some.map(() => new Float64Array(options.trials));
    for (let from = 0; from < options.trials; from += block) {
      const size = Math.min(block, options.trials - from);
      inputs.forEach((column, i) => {
        if (needed[i]) samplers[i]!(size === block ? column : column.subarray(0, size), from);
      });
      run(
        inputs,
        results.map((column) => column.subarray(from, from + size)),
        size,
      );
    }
    results.forEach((values, k) => {
      failures.push(slacks.counted[first + k] ? countFailures(values, slacks.decides[first + k] ? bad : undefined) : 0);
      spreads.push(spreadOf(values));
    });
  }
  return { spreads, failures, failed: bad.reduce((sum, flag) => sum + flag, 0) };
}

function countFailures(slack: Float64Array, bad: Uint8Array | undefined): number {
  let count = 0;
  for (let i = 0; i < slack.length; i++) {
    // A slack that is not a number is no proof that the check holds.
    if (slack[i]! >= 0) continue;
    count++;
    if (bad) bad[i] = 1;
  }
  return count;
}
