import { neededSlots } from '../../expression/prune.ts';
import type { Tape } from '../../expression/tape.ts';
import { constantAt } from '../../expression/wasm/plan.ts';
import type { Variable } from '../variable.ts';
import type { PartsTape } from './at-corners.ts';
import { type Law, lawOf } from './sample.ts';
import type { Slacks } from './simulate.ts';

/**
 * Boards to simulate: what is drawn, and what is computed of it. Outputs are distinct slots that some part may move.
 */
export interface Boards {
  readonly tape: Tape;
  readonly outputs: readonly number[];
  /** For each output, whether a board on which it is below zero fails. */
  readonly decides: readonly boolean[];
  /** By index of the tape's inputs, those that the outputs need. */
  readonly laws: ReadonlyMap<number, Law>;
}

/** The outputs that are worth simulating: each slot once, and none that is a constant. */
export function boardsOf(
  { tape, outputs }: PartsTape,
  variables: readonly Variable[],
  slacks: Slacks,
  seed: number,
): Boards {
  const deciding = new Map<number, boolean>();
  outputs.forEach((slot, k) => {
    if (constantAt(tape, slot) === undefined) deciding.set(slot, deciding.get(slot) || slacks.decides[k]!);
  });
  return drawn(tape, [...deciding.keys()], [...deciding.values()], lawsOf(tape, variables, seed));
}

/** The same boards, fewer of their outputs. */
export function only({ tape, laws }: Boards, outputs: readonly number[]): Boards {
  return drawn(
    tape,
    outputs,
    outputs.map(() => false),
    laws,
  );
}

function drawn(
  tape: Tape,
  outputs: readonly number[],
  decides: readonly boolean[],
  laws: ReadonlyMap<number, Law>,
): Boards {
  const needed = neededSlots(tape, outputs);
  return { tape, outputs, decides, laws: new Map([...laws].filter(([i]) => needed[i])) };
}

function lawsOf(tape: Tape, variables: readonly Variable[], seed: number): Map<number, Law> {
  const byId = new Map(variables.map((variable) => [variable.id, variable]));
  return new Map(tape.inputs.map((id, i) => [i, lawOf(byId.get(id)!, seed)]));
}
