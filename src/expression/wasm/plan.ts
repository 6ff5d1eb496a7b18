import type { OperationName } from '../operations/index.ts';
import { neededSlots } from '../prune.ts';
import type { Tape } from '../tape.ts';
import { multipliedOut } from './constant-power.ts';
import { writers } from './operations.ts';

/** One pass over the trials: steps of arithmetic in one loop, or one function over a column. */
export type Unit =
  | { readonly kind: 'loop'; readonly slots: readonly number[] }
  | { readonly kind: 'function'; readonly slot: number };

export interface Plan {
  readonly units: readonly Unit[];
  /** Slots of steps whose values another unit reads, or that are outputs: they have a column. */
  readonly columns: ReadonlySet<number>;
}

export interface CallStep {
  readonly operation: string;
  readonly args: readonly number[];
}

/** The step at a slot where it is an operation: not an input and not a constant. */
export function callAt({ inputs, steps }: Tape, slot: number): CallStep | undefined {
  const step = steps[slot - inputs.length];
  return step && 'args' in step ? step : undefined;
}

/** The number that a slot always has, where it is a constant. */
export function constantAt({ inputs, steps }: Tape, slot: number): number | undefined {
  const step = steps[slot - inputs.length];
  return step && 'constant' in step ? step.constant : undefined;
}

/** Whether a step is a function with a loop of its own. */
function standsAlone(tape: Tape, { operation, args }: CallStep): boolean {
  if (typeof writers[operation as OperationName] === 'function') return false;
  return !(operation === 'power' && multipliedOut(constantAt(tape, args[1]!)));
}

/**
 * Puts the steps that `outputs` need into units, in an order that can be run: first all arithmetic that waits for no
 * function, then the functions of its results, then the arithmetic that waits for those, and so on.
 * @param longest  steps in a loop
 */
export function planOf(tape: Tape, outputs: readonly number[], longest: number): Plan {
  const needed = neededSlots(tape, outputs);
  // How many functions deep a value lies.
  const depth = new Int32Array(needed.length);
  const loops: number[][] = [];
  const functions: number[][] = [];
  for (const slot of needed.keys()) {
    const step = needed[slot] ? callAt(tape, slot) : undefined;
    if (!step) continue;
    const below = Math.max(...step.args.map((arg) => depth[arg]!));
    const alone = standsAlone(tape, step);
    depth[slot] = alone ? below + 1 : below;
    const groups = alone ? functions : loops;
    const group = groups[below] ?? [];
    groups[below] = group;
    group.push(slot);
  }
  const units: Unit[] = [];
  for (let level = 0; level < Math.max(loops.length, functions.length); level++) {
    const slots = loops[level] ?? [];
    for (let i = 0; i < slots.length; i += longest) units.push({ kind: 'loop', slots: slots.slice(i, i + longest) });
    for (const slot of functions[level] ?? []) units.push({ kind: 'function', slot });
  }
  return { units, columns: crossing(tape, units, outputs) };
}

function crossing(tape: Tape, units: readonly Unit[], outputs: readonly number[]): Set<number> {
  const unitOf = new Map<number, Unit>();
  const slotsOf = (unit: Unit) => (unit.kind === 'loop' ? unit.slots : [unit.slot]);
  for (const unit of units) for (const slot of slotsOf(unit)) unitOf.set(slot, unit);
  const columns = new Set(outputs.filter((slot) => unitOf.has(slot)));
  for (const [slot, unit] of unitOf) {
    for (const arg of callAt(tape, slot)!.args) {
      if (unitOf.has(arg) && unitOf.get(arg) !== unit) columns.add(arg);
    }
    if (unit.kind === 'function') columns.add(slot);
  }
  return columns;
}
