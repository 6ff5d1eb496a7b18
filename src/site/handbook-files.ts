import { readdirSync, readFileSync } from 'node:fs';
import { basename, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Handbook, Method, Policy } from '../spec/method-schema.ts';
import { type Problem, showProblems } from '../spec/problem.ts';
import { readMethod, readPolicy } from '../spec/read-method.ts';

const ours = fileURLToPath(new URL('../handbook', import.meta.url));
const policyFolder = 'derating';

/** A handbook that cannot be read is a fault of its files, each named with its place. */
export class HandbookError extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(showProblems(problems));
    this.name = 'HandbookError';
    this.problems = problems;
  }
}

/**
 * Reads every method and derating policy from disk.
 * @param also  further folders of methods, such as a company's own beside its boards; a method there stands in for ours
 *   of the same name
 */
export function loadHandbook(also: readonly string[] = []): Handbook & { readonly files: ReadonlyMap<string, string> } {
  const methods = new Map<string, Method>();
  const policies = new Map<string, Policy>();
  const files = new Map<string, string>();
  const problems: Problem[] = [];
  for (const folder of [ours, ...also]) {
    for (const path of yamlFiles(folder)) {
      const text = readFileSync(path, 'utf8');
      const id = basename(path, '.yaml');
      const place = relative(folder, path).split('/')[0]!;
      const shown = relative(process.cwd(), path);
      const read =
        place === policyFolder
          ? readPolicy(text, shown, id)
          : readMethod(text, shown, id, place === basename(path) ? 'own' : place);
      problems.push(...read.problems);
      if ('method' in read && read.method) methods.set(id, read.method);
      if ('policy' in read && read.policy) policies.set(id, read.policy);
      files.set(id, text);
    }
  }
  if (problems.length) throw new HandbookError(problems);
  return { methods, policies, files };
}

const yamlFiles = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => join(folder, name));
