import { operationNamed } from '../operations/index.ts';
import { neededSlots } from '../prune.ts';
import type { Tape } from '../tape.ts';

/**
 * Calculates trials `0 … count−1`: reads one column per input of the tape (only those that the outputs need), writes one
 * per output. Columns may be longer than `count`.
 */
export type Kernel = (inputs: readonly Float64Array[], outputs: readonly Float64Array[], count: number) => void;

/**
 * A kernel for the given outputs of `tape`, as generated JavaScript: the same numbers, bit for bit, as `evaluate`.
 * Nothing from a spec reaches the generated text: names in it are slot numbers, the rest is the operations' own code.
 */
export function kernelOf(tape: Tape, outputs: readonly number[]): Kernel {
  const { loops, carried } = planOf(tape, outputs);
  const runs = loops.map((loop) => new Function('columns', 'count', textOf(tape, loop)) as Run);
  const slots = slotCount(tape);
  const columns = new Array<Float64Array>(slots + outputs.length);
  let size = 0;
  return (inputs, results, count) => {
    if (count > size) {
      for (const slot of carried) columns[slot] = new Float64Array(count);
      size = count;
    }
    for (let i = 0; i < tape.inputs.length; i++) columns[i] = inputs[i]!;
    for (let k = 0; k < outputs.length; k++) columns[slots + k] = results[k]!;
    for (const run of runs) run(columns, count);
  };
}

type Run = (columns: readonly Float64Array[], count: number) => void;

/** One pass over the trials: the slots it calculates, and the columns it leaves them in. */
interface Loop {
  readonly slots: readonly number[];
  readonly writes: readonly (readonly [slot: number, column: number])[];
}

/**
 * Steps in one loop. Longer ones do not fit the registers: loops of 20 to 60 took 30 ms for 100 000 trials of 900 steps,
 * loops of 80 to 400 took 45 to 55 ms.
 */
const LONGEST_LOOP = 40;

const slotCount = (tape: Tape): number => tape.inputs.length + tape.steps.length;
const stepAt = (tape: Tape, slot: number) => tape.steps[slot - tape.inputs.length];

function argsOf(tape: Tape, slot: number): readonly number[] {
  const step = stepAt(tape, slot);
  return step && 'args' in step ? step.args : [];
}

/** Cuts the steps into loops. What a later loop reads is carried in a column under its slot number. */
function planOf(tape: Tape, outputs: readonly number[]): { loops: Loop[]; carried: number[] } {
  const needed = neededSlots(tape, outputs);
  const calls = Array.from(needed.keys()).filter((slot) => needed[slot] && argsOf(tape, slot).length > 0);
  const loopOf = new Map(calls.map((slot, i) => [slot, Math.floor(i / LONGEST_LOOP)]));
  const carried = new Set<number>();
  for (const slot of calls) {
    for (const arg of argsOf(tape, slot)) {
      const from = loopOf.get(arg);
      if (from !== undefined && from !== loopOf.get(slot)) carried.add(arg);
    }
  }
  const loops = Array.from({ length: Math.max(1, Math.ceil(calls.length / LONGEST_LOOP)) }, (_, l): Loop => {
    const own = calls.slice(l * LONGEST_LOOP, (l + 1) * LONGEST_LOOP);
    const results = outputs.map((slot, k) => [slot, slotCount(tape) + k] as const);
    // Outputs that are inputs or constants are written by the first loop.
    const given = results.filter(([slot]) => (loopOf.get(slot) ?? 0) === l);
    return {
      slots: own,
      writes: [...own.filter((slot) => carried.has(slot)).map((slot) => [slot, slot] as const), ...given],
    };
  });
  return { loops, carried: [...carried] };
}

function textOf(tape: Tape, { slots, writes }: Loop): string {
  const own = new Set(slots);
  const read = new Set<number>();
  const name = (slot: number): string => {
    const step = stepAt(tape, slot);
    if (step && 'constant' in step) return literal(step.constant);
    if (!own.has(slot)) read.add(slot);
    return `s${slot}`;
  };
  const body = slots.map((slot) => {
    const step = stepAt(tape, slot) as { readonly operation: string; readonly args: readonly number[] };
    return `const s${slot} = ${operationNamed(step.operation).code(step.args.map(name))};`;
  });
  const results = writes.map(([slot, column]) => `c${column}[i] = ${name(slot)};`);
  const columns = [...read, ...writes.map(([, column]) => column)];
  return [
    "'use strict';",
    ...columns.map((column) => `const c${column} = columns[${column}];`),
    'for (let i = 0; i < count; i++) {',
    ...[...read].map((slot) => `const s${slot} = c${slot}[i];`),
    ...body,
    ...results,
    '}',
  ].join('\n');
}

/** In brackets, so that it may follow any sign. */
const literal = (value: number): string => (value < 0 || Object.is(value, -0) ? `(-${-value})` : String(value));
