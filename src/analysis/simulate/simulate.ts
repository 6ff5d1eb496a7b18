import { constantAt } from '../../expression/wasm/plan.ts';
import type { Variable } from '../variable.ts';
import type { PartsTape } from './at-corners.ts';
import { type Boards, boardsOf, only } from './boards.ts';
import type { Counts } from './counts.ts';
import { chunk } from './counts.ts';
import { merged } from './merge.ts';
import { simulateByScript } from './script.ts';
import { simdBlocks } from './simd/blocks.ts';
import { type Machine, machineFor } from './simd/machine.ts';
import { Run } from './simd/run.ts';
import { hasSimd } from './simd/start.ts';
import { pointSpread, type Spread } from './spread.ts';
import { wholeSpreads } from './whole.ts';

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

/**
 * For each output: whether it is a slack, of which boards below zero are counted, and whether it decides on the board.
 */
export interface Slacks {
  readonly counted: readonly boolean[];
  readonly decides: readonly boolean[];
}

/** Counts all chunks of boards on a machine, by one run or several; `chunks` is how many there are. */
export type Counting = (machine: Machine, trials: number, chunks: number) => readonly Counts[];

/** One run after the other, in this thread. */
export const alone: Counting = (machine, trials, chunks) => {
  const run = new Run(machine, trials);
  for (let index = 0; index < chunks; index++) run.count(index);
  return [run.finish()];
};

/**
 * Draws every part once a board and computes every output from the same board.
 * @param counting  who does the work: the results are the same, bit for bit
 */
export function simulate(
  parts: PartsTape,
  variables: readonly Variable[],
  slacks: Slacks,
  options: SimulationOptions,
  counting: Counting = alone,
): Simulation {
  const boards = boardsOf(parts, variables, slacks, options.seed);
  const simulated = hasSimd() ? bySimd(boards, options.trials, counting) : simulateByScript(boards, options.trials);
  return spreadOut(parts, boards, slacks, simulated, options.trials);
}

/** What is found for the outputs of `Boards`. */
export interface Simulated {
  readonly spreads: readonly Spread[];
  readonly failures: readonly number[];
  readonly failed: number;
}

function bySimd(boards: Boards, trials: number, counting: Counting): Simulated {
  if (boards.outputs.length === 0) return { spreads: [], failures: [], failed: 0 };
  const machine = machineFor(boards);
  const { spreads, failures, failed } = merged(counting(machine, trials, Math.ceil(trials / chunk)), trials);
  const open = boards.outputs.filter((_, k) => spreads[k] === undefined);
  const whole = wholeSpreads(open, trials, (outputs) => simdBlocks(only(boards, outputs)));
  const found = new Map(open.map((slot, i) => [slot, whole[i]!]));
  return { spreads: boards.outputs.map((slot, k) => spreads[k] ?? found.get(slot)!), failures, failed };
}

/** Results for every output that was asked for, constants among them. */
function spreadOut(
  { tape, outputs }: PartsTape,
  boards: Boards,
  { counted, decides }: Slacks,
  { spreads, failures, failed }: Simulated,
  trials: number,
): Simulation {
  const place = new Map(boards.outputs.map((slot, k) => [slot, k]));
  const constants = outputs.map((slot) => constantAt(tape, slot));
  // A slack that is not a number is no proof that the check holds.
  const fails = constants.map((value) => value !== undefined && !(value >= 0));
  return {
    spreads: outputs.map((slot, i) =>
      constants[i] === undefined ? spreads[place.get(slot)!]! : pointSpread(constants[i], trials),
    ),
    failures: outputs.map((slot, i) => {
      if (!counted[i]) return 0;
      return constants[i] === undefined ? failures[place.get(slot)!]! : fails[i] ? trials : 0;
    }),
    failed: fails.some((one, i) => one && decides[i]) ? trials : failed,
  };
}
