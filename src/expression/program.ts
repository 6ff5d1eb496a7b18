import type { Interval } from './interval.ts';
import type { Operation } from './operation.ts';
import { operationNamed } from './operations/index.ts';
import { point, ZERO } from './ranges.ts';
import type { Tape } from './tape.ts';

/**
 * A tape made ready to be run many times: operations looked up, and for each step a place for its arguments that is
 * used again on each run, so that a run allocates little. Readings do not call each other while they fill it.
 */
export interface Program {
  /** Number of inputs: the slot of the first step. */
  readonly first: number;
  readonly slots: number;
  readonly steps: readonly ProgramStep[];
}

export type ProgramStep =
  | { readonly operation: undefined; readonly constant: number; readonly within: Interval }
  | {
      readonly operation: Operation;
      readonly args: readonly number[];
      readonly numbers: number[];
      readonly ranges: Interval[];
    };

const programs = new WeakMap<Tape, Program>();

export function programOf(tape: Tape): Program {
  let program = programs.get(tape);
  if (!program) {
    program = compile(tape);
    programs.set(tape, program);
  }
  return program;
}

function compile({ inputs, steps }: Tape): Program {
  return {
    first: inputs.length,
    slots: inputs.length + steps.length,
    steps: steps.map((step): ProgramStep => {
      if ('constant' in step) {
        return { operation: undefined, constant: step.constant, within: step.within ?? point(step.constant) };
      }
      const operation = operationNamed(step.operation);
      return { operation, args: step.args, numbers: step.args.map(() => 0), ranges: step.args.map(() => ZERO) };
    }),
  };
}
