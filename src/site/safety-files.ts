import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readSafety } from '../safety/read-safety.ts';
import type { SafetyData } from '../safety/safety-data.ts';
import { type Problem, showProblems } from '../spec/problem.ts';

const ours = fileURLToPath(new URL('../safety', import.meta.url));

/** Safety tables that cannot be read are a fault of their files, each named with its place. */
export class SafetyError extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(showProblems(problems));
    this.name = 'SafetyError';
    this.problems = problems;
  }
}

/** Reads the safety cautions and their tables from disk, with the texts of the files by their path below `src/safety`. */
export function loadSafety(): SafetyData & { readonly files: ReadonlyMap<string, string> } {
  const names = readdirSync(ours, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.yaml'))
    .sort();
  const files = new Map(names.map((name) => [name, readFileSync(join(ours, name), 'utf8')]));
  const texts = [...files].map(([name, text]) => ({ file: relative(process.cwd(), join(ours, name)), text }));
  const { data, problems } = readSafety(texts);
  if (!data) throw new SafetyError(problems);
  return { ...data, files };
}
