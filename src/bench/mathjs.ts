import { compile } from 'mathjs';
import { fill } from '../analysis/simulate/sample.ts';
import { neededSlots } from '../expression/prune.ts';
import { constantAt } from '../expression/wasm/plan.ts';
import { timed } from './median.ts';
import { boardsFor, type Subject } from './subject.ts';

const signs: Readonly<Record<string, string>> = {
  add: '+',
  sum: '+',
  subtract: '-',
  multiply: '*',
  divide: '/',
  power: '^',
};
const names: Readonly<Record<string, string>> = { ln: 'log', min: 'min', max: 'max' };

/** Microseconds a board when the same equations are compiled by mathjs and evaluated board by board. */
export function mathjsPerBoard(subject: Subject, trials: number): number {
  const { tape, outputs, laws } = boardsFor(subject);
  const needed = neededSlots(tape, outputs);
  const first = tape.inputs.length;
  const term = (slot: number): string => String(constantAt(tape, slot) ?? `s${slot}`);
  const lines = tape.steps.flatMap((step, s) => {
    if (!needed[first + s] || 'constant' in step) return [];
    const args = step.args.map(term);
    const sign = signs[step.operation];
    const text = sign
      ? args.map((arg) => `(${arg})`).join(` ${sign} `)
      : `${names[step.operation] ?? step.operation}(${args.join(', ')})`;
    return [`s${first + s} = ${text}`];
  });
  const code = compile(lines.join('\n'));
  const columns = [...laws].map(([i, law]) => {
    const column = new Float64Array(trials);
    fill(column, law, 0);
    return [`s${i}`, column] as const;
  });
  const { ms } = timed(() => {
    for (let trial = 0; trial < trials; trial++) {
      code.evaluate(Object.fromEntries(columns.map(([name, column]) => [name, column[trial]!])));
    }
  });
  return (1000 * ms) / trials;
}
