import type { Boards } from '../analysis/simulate/boards.ts';
import type { Law } from '../analysis/simulate/sample.ts';
import type { OperationName } from '../expression/operations/index.ts';
import { neededSlots } from '../expression/prune.ts';
import { numpyWriters } from './numpy-operations.ts';

/**
 * The boards as a Python program for NumPy, written as well as NumPy allows: blocks that stay in the cache, every
 * result put into an array that is there already, arrays used again once nobody reads them. Read with `numpy-worker.py`
 * behind it, which says what the functions are for.
 */
export function numpySource({ tape, outputs, laws }: Boards): string {
  const first = tape.inputs.length;
  const needed = neededSlots(tape, outputs);
  const names = new Map<number, string>();
  for (const [column, i] of [...laws.keys()].entries()) names.set(i, `x[${column}]`);
  const arrays = new Arrays();
  const lines: string[] = [];
  const lastUse = lastUses(tape.steps, first, needed);
  const kept = new Map(outputs.map((slot, k) => [slot, `y[${k}]`]));
  tape.steps.forEach((step, s) => {
    const slot = first + s;
    if (!needed[slot]) return;
    if ('constant' in step) {
      names.set(slot, python(step.constant));
      return;
    }
    const args = step.args.map((arg) => names.get(arg)!);
    // An argument that nobody reads later may be overwritten by the result.
    for (const arg of new Set(step.args)) if (lastUse.get(arg) === s && !kept.has(arg)) arrays.release(names.get(arg)!);
    const out = kept.get(slot) ?? arrays.take();
    names.set(slot, out);
    lines.push(...numpyWriters[step.operation as OperationName](out, args, 't'));
  });
  for (const [slot, out] of kept) if (slot < first) lines.push(`${out}[:] = ${names.get(slot)!}`);
  return [
    `INPUTS = ${laws.size}`,
    `OUTPUTS = ${outputs.length}`,
    `ARRAYS = ${arrays.count}`,
    'def sample(rng, x, n, t):',
    ...indented([...laws.values()].flatMap((law, column) => draws(law, `x[${column}]`))),
    'def evaluate(x, y, w, t):',
    ...indented(lines),
    '',
  ].join('\n');
}

const indented = (lines: readonly string[]): string[] => ['pass', ...lines].map((line) => `    ${line}`);

const python = (value: number): string =>
  Number.isNaN(value) ? 'np.nan' : Math.abs(value) === Infinity ? `${value < 0 ? '-' : ''}np.inf` : String(value);

/** Working arrays `w[0]`, `w[1]`, …, as few as will do. */
class Arrays {
  readonly #free: string[] = [];
  count = 0;

  take(): string {
    return this.#free.pop() ?? `w[${this.count++}]`;
  }

  release(name: string): void {
    if (name.startsWith('w')) this.#free.push(name);
  }
}

function lastUses(steps: Boards['tape']['steps'], first: number, needed: Uint8Array): Map<number, number> {
  const last = new Map<number, number>();
  steps.forEach((step, s) => {
    if (needed[first + s] && 'args' in step) for (const arg of step.args) last.set(arg, s);
  });
  return last;
}

/** NumPy's own generator and its fastest way to each distribution; beyond three deviations it is drawn again. */
function draws(law: Law, x: string): string[] {
  switch (law.kind) {
    case 'held':
      return [`${x}[:] = ${law.value}`];
    case 'uniform':
      return [
        `rng.random(out=${x})`,
        `np.multiply(${x}, ${law.width}, out=${x})`,
        `np.add(${x}, ${law.min}, out=${x})`,
      ];
    case 'normal':
      return [
        `rng.standard_normal(out=${x})`,
        ...(law.kept < 1 ? [`truncate(rng, ${x})`] : []),
        ...(law.left === law.right
          ? [`np.multiply(${x}, ${law.right}, out=${x})`]
          : [`np.multiply(${x}, np.where(${x} < 0, ${law.left}, ${law.right}), out=${x})`]),
        `np.add(${x}, ${law.typ}, out=${x})`,
      ];
    case 'triangular':
      return [`triangular(rng, ${x}, t, ${[law.min, law.max, law.split, law.rising, law.falling].join(', ')})`];
    default:
      return law satisfies never;
  }
}
