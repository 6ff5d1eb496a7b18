import type { Step, Tape } from './tape.ts';

/** A tape made from another: the slots of the outputs on it, and for each of its inputs the index it had before. */
export interface Derived {
  readonly tape: Tape;
  readonly outputs: readonly number[];
  readonly inputs: readonly number[];
}

/** Marks the slots that `outputs` need. */
export function neededSlots(tape: Tape, outputs: readonly number[]): Uint8Array {
  const first = tape.inputs.length;
  const needed = new Uint8Array(first + tape.steps.length);
  for (const slot of outputs) needed[slot] = 1;
  for (let s = tape.steps.length - 1; s >= 0; s--) {
    const step = tape.steps[s]!;
    if (needed[first + s] && 'args' in step) for (const arg of step.args) needed[arg] = 1;
  }
  return needed;
}

/** The tape without the steps and inputs that none of `outputs` needs; nothing is calculated otherwise. */
export function pruned(tape: Tape, outputs: readonly number[]): Derived {
  const needed = neededSlots(tape, outputs);
  const place = new Int32Array(needed.length);
  const inputs: number[] = [];
  tape.inputs.forEach((_, i) => {
    if (needed[i]) place[i] = inputs.push(i) - 1;
  });
  const steps: Step[] = [];
  tape.steps.forEach((step, s) => {
    const slot = tape.inputs.length + s;
    if (!needed[slot]) return;
    place[slot] = inputs.length + steps.length;
    steps.push('args' in step ? { operation: step.operation, args: step.args.map((arg) => place[arg]!) } : step);
  });
  const names = inputs.map((i) => tape.inputs[i]!);
  return { tape: { inputs: names, steps }, outputs: outputs.map((slot) => place[slot]!), inputs };
}
