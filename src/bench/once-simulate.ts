import { enableCompileCache } from 'node:module';

// One simulation in a process of its own, started by cold.ts: prints the megabytes that it took at the most.
enableCompileCache('.cache/code');
const { simulate } = await import('../analysis/simulate/simulate.ts');
const { madeUpBoard } = await import('./made-up-board.ts');

const { tape, outputs, variables } = madeUpBoard();
const all = outputs.map(() => true);
simulate({ tape, outputs }, variables, { counted: all, decides: all }, { seed: 1, trials: Number(process.argv[2]) });
console.log(process.resourceUsage().maxRSS / 1024);
