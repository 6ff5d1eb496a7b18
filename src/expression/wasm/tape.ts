import { type OperationName, operationNamed } from '../operations/index.ts';
import { neededSlots } from '../prune.ts';
import type { Tape } from '../tape.ts';
import { type Code, loop, type Statement, type Term } from './code.ts';
import { constantPower } from './constant-power.ts';
import { writers } from './operations.ts';
import { integer, load, store, twice } from './vectors.ts';

/** Where columns of a block of trials stand in memory: addresses of their first double. */
export interface Columns {
  input(index: number): number;
  output(index: number): number;
  /** A column to carry a value from one loop to a later one. */
  carried(): number;
}

/**
 * Steps in one loop.
 */
export const LONGEST_LOOP = 400;

export function tapeLoops(
  tape: Tape,
  outputs: readonly number[],
  columns: Columns,
  end: Term,
  longest = LONGEST_LOOP,
): Statement {
  return (code) => {
    const { steps, inputs } = tape;
    const first = inputs.length;
    const needed = neededSlots(tape, outputs);
    const calls: number[] = [];
    steps.forEach((step, s) => {
      if (needed[first + s] && 'args' in step) calls.push(first + s);
    });
    const loopOf = new Map(calls.map((slot, i) => [slot, Math.floor(i / longest)]));
    const stepAt = (slot: number) => steps[slot - first];
    const carried = new Map<number, number>();
    for (const slot of calls) {
      const step = stepAt(slot)!;
      if (!('args' in step)) continue;
      for (const arg of step.args) {
        const from = loopOf.get(arg);
        if (from !== undefined && from !== loopOf.get(slot) && !carried.has(arg)) carried.set(arg, columns.carried());
      }
    }
    const count = Math.max(1, Math.ceil(calls.length / longest));
    for (let l = 0; l < count; l++) {
      code.do(
        loop(integer(0), end, 16, (at) => {
          const values = new Map<number, Term>();
          const value = (slot: number): Term => {
            const known = values.get(slot);
            if (known) return known;
            const step = stepAt(slot);
            if (step && 'constant' in step) return twice(step.constant);
            const column = step ? carried.get(slot)! : columns.input(slot);
            const read = code.let(load(at, column));
            values.set(slot, read);
            return read;
          };
          for (const slot of calls.slice(l * longest, (l + 1) * longest)) {
            const step = stepAt(slot) as { operation: string; args: readonly number[] };
            const args = step.args.map(value);
            const exponent = step.operation === 'power' ? stepAt(step.args[1]!) : undefined;
            const known =
              exponent && 'constant' in exponent ? constantPower(code, args[0]!, exponent.constant) : undefined;
            values.set(slot, code.let(known ?? writers[step.operation as OperationName](code, args)));
            const column = carried.get(slot);
            if (column !== undefined) store(at, value(slot), column)(code);
          }
          outputs.forEach((slot, k) => {
            if ((loopOf.get(slot) ?? 0) === l) store(at, value(slot), columns.output(k))(code);
          });
        }),
      );
    }
  };
}
