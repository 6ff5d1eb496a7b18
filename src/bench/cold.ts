import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Runs a script of this folder in a process of its own; what it prints, and milliseconds from start to end. */
function fresh(script: string, words: readonly string[]): { stdout: string; ms: number } {
  const start = performance.now();
  const file = fileURLToPath(new URL(script, import.meta.url));
  const { status, stdout, stderr } = spawnSync(process.execPath, [file, ...words], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${script} ended with status ${status}: ${stderr}`);
  return { stdout, ms: performance.now() - start };
}

/**
 * One simulation of the made-up board in a process of its own, with Node's cache of compiled code filled, as Python's
 * is: milliseconds from start to end, megabytes at the most.
 */
export function coldSimulation(trials: number): { ms: number; memory: number } {
  const { stdout, ms } = fresh('./once-simulate.ts', [String(trials)]);
  return { ms, memory: Number(stdout) };
}

/** One board from its spec to its findings in a process of its own: milliseconds without the start of the process. */
export function coldPipeline(name: string, trials: number): { ms: number; memory: number } {
  return JSON.parse(fresh('./once-pipeline.ts', [name, String(trials)]).stdout) as { ms: number; memory: number };
}
