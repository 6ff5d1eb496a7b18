import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { numpySource } from './numpy-source.ts';
import { boardsFor, type Subject } from './subject.ts';

/** What NumPy found for one output: mean, deviation, quantiles, bars, failures; null where some board has no value. */
export type NumpyResult = readonly [
  mean: number | null,
  sd: number | null,
  quantiles: readonly number[] | null,
  bars: readonly number[] | null,
  failures: number,
];

/** One simulation by NumPy. Seconds; megabytes at the most so far. */
export interface NumpyAnswer {
  readonly total: number;
  readonly sample?: number;
  readonly evaluate?: number;
  readonly summarise?: number;
  readonly memory: number;
  readonly results: readonly NumpyResult[];
}

/** Where to look: the one that was named, or the usual ones. */
function pythons(): readonly string[] {
  const named = process.env.COPPERPLATE_PYTHON;
  return named ? [named] : ['python3', 'python', '/usr/bin/python3', '/usr/local/bin/python3', 'py'];
}

/** A Python that has NumPy, and their versions; undefined where none is found. */
export function findNumpy(): { python: string; version: string } | undefined {
  for (const python of pythons()) {
    const code = 'import sys, numpy; print("NumPy", numpy.__version__, "under Python", sys.version.split()[0])';
    const { status, stdout } = spawnSync(python, ['-c', code], { encoding: 'utf8' });
    if (status === 0) return { python, version: stdout.trim() };
  }
  return undefined;
}

export const howToGetNumpy = (): string =>
  [
    `NumPy was not found: none of ${pythons().join(', ')} has it, so nothing can be compared with it.`,
    "Install it with `pip install numpy`, or the system's package (Debian, Ubuntu: `apt-get install python3-numpy`),",
    'or name another Python with COPPERPLATE_PYTHON=<path>.',
  ].join('\n');

/** A Python process that simulates one subject again and again. */
export class Numpy {
  readonly file: string;
  readonly #folder: string;
  readonly #python: string;
  readonly #process: ChildProcess;
  readonly #lines: AsyncIterator<string>;

  constructor(python: string, subject: Subject) {
    this.#folder = mkdtempSync(join(tmpdir(), 'copperplate-bench-'));
    this.file = join(this.#folder, 'boards.py');
    this.#python = python;
    const worker = readFileSync(new URL('./numpy-worker.py', import.meta.url), 'utf8');
    writeFileSync(this.file, `import numpy as np\n${numpySource(boardsFor(subject))}\n\n${worker}`);
    this.#process = spawn(python, [this.file], { stdio: ['pipe', 'pipe', 'inherit'] });
    this.#lines = createInterface({ input: this.#process.stdout! })[Symbol.asyncIterator]();
  }

  /** In one process, or in two that share memory. */
  async ask(how: 'alone' | 'pair', trials: number, seed: number): Promise<NumpyAnswer> {
    this.#process.stdin!.write(`${how} ${trials} ${seed}\n`);
    const { value, done } = await this.#lines.next();
    if (done) throw new Error(`Python gave no answer; its program is ${this.file}`);
    return JSON.parse(value) as NumpyAnswer;
  }

  /** One simulation in a process of its own, from its start to its end: milliseconds and megabytes. */
  cold(trials: number): { ms: number; memory: number } {
    const start = performance.now();
    const { status, stdout } = spawnSync(this.#python, [this.file], {
      input: `alone ${trials} 1\n`,
      encoding: 'utf8',
      maxBuffer: 1e9,
    });
    if (status !== 0) throw new Error(`Python ended with status ${status}`);
    return { ms: performance.now() - start, memory: (JSON.parse(stdout) as NumpyAnswer).memory };
  }

  close(): void {
    this.#process.stdin!.end();
    rmSync(this.#folder, { recursive: true, force: true });
  }
}
