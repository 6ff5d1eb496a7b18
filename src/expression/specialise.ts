import { type Derived, neededSlots, pruned } from './prune.ts';
import type { Tape } from './tape.ts';
import { TapeBuilder } from './tape-builder.ts';

/**
 * Lays the steps that `outputs` need onto another builder, where its inputs are the given slots; what those make constant
 * or equal is calculated once. Several tapes, or one tape at several corners, may so share one builder.
 * @param inputs  for each input of `tape`, a slot of the builder
 * @returns the builder's slots of `outputs`
 */
export function replay(
  tape: Tape,
  builder: TapeBuilder,
  inputs: ArrayLike<number>,
  outputs: readonly number[],
): number[] {
  const first = tape.inputs.length;
  const needed = neededSlots(tape, outputs);
  const slots = new Int32Array(needed.length);
  for (let i = 0; i < first; i++) slots[i] = inputs[i]!;
  tape.steps.forEach((step, s) => {
    if (!needed[first + s]) return;
    const args = 'args' in step ? step.args.map((arg) => slots[arg]!) : [];
    slots[first + s] =
      'args' in step ? builder.call(step.operation, args) : builder.constant(step.constant, step.within);
  });
  return outputs.map((slot) => slots[slot]!);
}

/**
 * The tape with some inputs held at a number, and all that follows from them calculated beforehand.
 * @param held  input index → its number
 */
export function specialise(tape: Tape, held: ReadonlyMap<number, number>, outputs: readonly number[]): Derived {
  const builder = new TapeBuilder();
  const free = [...tape.inputs.keys()].filter((i) => !held.has(i));
  // By index, for names may repeat.
  const inputs = tape.inputs.map((_, i) => (held.has(i) ? builder.constant(held.get(i)!) : builder.input(String(i))));
  const built = builder.finish(replay(tape, builder, inputs, outputs));
  const names = free.map((i) => tape.inputs[i]!);
  const left = pruned({ inputs: names, steps: built.tape.steps }, built.outputs);
  return { ...left, inputs: left.inputs.map((i) => free[i]!) };
}
