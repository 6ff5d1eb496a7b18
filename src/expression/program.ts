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
  /** What each step is to the readings that do plain arithmetic themselves, and the slots of its first two arguments. */
  readonly codes: Uint8Array;
  readonly left: Int32Array;
  readonly right: Int32Array;
}

export type ProgramStep =
  | { readonly operation: undefined; readonly constant: number; readonly within: Interval }
  | {
      readonly operation: Operation;
      readonly args: readonly number[];
      readonly numbers: number[];
      readonly ranges: Interval[];
    };

/**
 * Most steps of a board are plain arithmetic. A search runs its tape a million times, so the numeric readings do these
 * in place, without a call and without an array; `laws.test.ts` holds them to the operations' own readings.
 */
export const CONSTANT = 0;
export const ADD = 1;
export const SUBTRACT = 2;
export const MULTIPLY = 3;
export const DIVIDE = 4;
export const NEGATE = 5;
/** Anything else: the operation is asked. */
export const CALL = 6;

const codeOf: Readonly<Record<string, number>> = {
  add: ADD,
  subtract: SUBTRACT,
  multiply: MULTIPLY,
  divide: DIVIDE,
  negate: NEGATE,
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
  const argument = (k: number) => Int32Array.from(steps, (step) => ('args' in step ? (step.args[k] ?? 0) : 0));
  return {
    first: inputs.length,
    slots: inputs.length + steps.length,
    codes: Uint8Array.from(steps, (step) => ('args' in step ? (codeOf[step.operation] ?? CALL) : CONSTANT)),
    left: argument(0),
    right: argument(1),
    steps: steps.map((step): ProgramStep => {
      if ('constant' in step) {
        return { operation: undefined, constant: step.constant, within: step.within ?? point(step.constant) };
      }
      const operation = operationNamed(step.operation);
      return { operation, args: step.args, numbers: step.args.map(() => 0), ranges: step.args.map(() => ZERO) };
    }),
  };
}
