import { existsSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import { basename, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Handbook, Method, Policy } from '../spec/method-schema.ts';
import { type Problem, showProblems } from '../spec/problem.ts';
import { readMethod, readPolicy } from '../spec/read-method.ts';
import { readOwnMethod } from '../spec/read-own-method.ts';

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

export interface Book extends Handbook {
  /** Text of each file by the id of its method or policy. */
  readonly files: ReadonlyMap<string, string>;
  /** Path of each file. */
  readonly paths: readonly string[];
}

/** Folder of a company's own methods, beside its boards. */
const ownFolder = 'methods';

/**
 * Reads every method and derating policy from disk.
 * @param designs  a designs folder, whose own methods in `methods/` are read with the others, in the same form and as strictly;
 *   each one's worked example is worked out
 * @throws HandbookError with every problem of every file, and for a name that stands in the handbook already
 */
export function loadHandbook(designs?: string): Book {
  const methods = new Map<string, Method>();
  const policies = new Map<string, Policy>();
  const files = new Map<string, string>();
  const problems: Problem[] = [];
  const shown = (path: string) => relative(process.cwd(), path);
  const own = designs === undefined ? [] : ownFiles(join(designs, ownFolder));
  const shipped = yamlFiles(ours);
  for (const path of shipped) {
    const text = readFileSync(path, 'utf8');
    const id = basename(path, '.yaml');
    const place = placeOf(ours, path);
    const read = place === policyFolder ? readPolicy(text, shown(path), id) : readMethod(text, shown(path), id, place);
    problems.push(...read.problems);
    if ('method' in read && read.method) methods.set(id, read.method);
    if ('policy' in read && read.policy) policies.set(id, read.policy);
    files.set(id, text);
  }
  for (const path of own) {
    const text = readFileSync(path, 'utf8');
    const id = basename(path, '.yaml');
    const place = placeOf(join(designs!, ownFolder), path);
    const read = readOwnMethod(text, shown(path), id, place, { methods, policies });
    problems.push(...read.problems);
    if (read.method && !files.has(id)) methods.set(id, read.method);
    files.set(id, text);
  }
  if (problems.length) throw new HandbookError(problems);
  return { methods, policies, files, paths: [...shipped, ...own] };
}

/** The folder a file stands in says where on the board its method sits. */
function placeOf(folder: string, path: string): string {
  const [first, ...rest] = relative(folder, path).split(sep);
  return rest.length ? first! : 'own';
}

/** Files that lead out of the designs folder by a link are not followed. */
function ownFiles(folder: string): string[] {
  if (!existsSync(folder)) return [];
  const real = realpathSync(folder);
  return yamlFiles(folder).filter((path) => realpathSync(path).startsWith(real + sep));
}

const yamlFiles = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => join(folder, name));
