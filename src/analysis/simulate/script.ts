import { kernelOf } from '../../expression/readings/kernel.ts';
import { type Boards, only } from './boards.ts';
import { fill } from './sample.ts';
import type { Simulated } from './simulate.ts';
import { type Blocks, wholeSpreads } from './whole.ts';

const block = 512;

/** Boards computed by generated JavaScript. */
export function scriptBlocks({ tape, outputs, laws }: Boards): Blocks {
  const run = kernelOf(tape, outputs);
  const inputs = tape.inputs.map((_, i) => new Float64Array(laws.has(i) ? block : 0));
  const results = outputs.map(() => new Float64Array(block));
  return {
    block,
    run: (from) => {
      for (const [i, law] of laws) fill(inputs[i]!, law, from);
      run(inputs, results, block);
      return results;
    },
  };
}

/** The plain way: every value of every output is kept and looked at. */
export function simulateByScript(boards: Boards, trials: number): Simulated {
  const failures: number[] = [];
  const bad = new Uint8Array(trials);
  const spreads = wholeSpreads(
    boards.outputs,
    trials,
    (outputs) => scriptBlocks(only(boards, outputs)),
    (values, k) => failures.push(countFailures(values, boards.decides[k] ? bad : undefined)),
  );
  return { spreads, failures, failed: bad.reduce((sum, flag) => sum + flag, 0) };
}

function countFailures(slack: Float64Array, bad: Uint8Array | undefined): number {
  let count = 0;
  for (let i = 0; i < slack.length; i++) {
    // A slack that is not a number is no proof that the check holds.
    if (slack[i]! >= 0) continue;
    count++;
    if (bad) bad[i] = 1;
  }
  return count;
}
