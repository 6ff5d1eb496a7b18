import { join, relative } from 'node:path';
import { find } from '../analysis/find.ts';
import type { Findings } from '../analysis/findings.ts';
import { undefinedResults } from '../analysis/undefined-results.ts';
import { type DigestFile, inputsDigest } from '../archive/digest.ts';
import { packetFiles } from '../packet/files.ts';
import { packetOf } from '../packet/packet-of.ts';
import type { Board } from '../spec/board.ts';
import { showProblems } from '../spec/problem.ts';
import { readSpec } from '../spec/read-spec.ts';
import type { Calculated } from './calculated.ts';
import { type DesignFolder, readDesigns } from './designs.ts';
import { cacheKey, keep, kept } from './findings-cache.ts';
import { loadHandbook } from './handbook-files.ts';
import { type Options, usualOptions } from './options.ts';
import { version } from './version.ts';

/** A revision that was calculated, before any packet is made of it. */
export interface Revision {
  readonly design: DesignFolder;
  readonly board: Board;
  readonly findings: Findings;
}
export interface Failure {
  readonly design: DesignFolder;
  /** Plain text with file, line and column. */
  readonly failure: string;
}

type Book = ReturnType<typeof loadHandbook>;

/** Options of the run that this process is in the middle of; the site's own build has no other way to be told. */
let current: Options = optionsFromEnvironment();

export function useOptions(options: Options): void {
  current = options;
  process.env.COPPERPLATE_OPTIONS = JSON.stringify(options);
}

function optionsFromEnvironment(): Options {
  const text = process.env.COPPERPLATE_OPTIONS;
  return text ? { ...usualOptions, ...(JSON.parse(text) as Options) } : usualOptions;
}

/** Reads and calculates one revision. */
export function calculate(design: DesignFolder, book: Book, options: Options): Revision | Failure {
  const file = relative(process.cwd(), join(design.folder, 'spec.yaml'));
  const { board, problems, locate } = readSpec(
    design.files.get('spec.yaml')!,
    { file, board: design.board, revision: design.revision },
    book,
  );
  if (!board) return { design, failure: showProblems(problems) };
  const undefinedOnes = undefinedResults(board);
  if (undefinedOnes.length)
    return { design, failure: showProblems(undefinedOnes.map(({ id, ...what }) => locate(id, what))) };
  const digest = inputsDigest(inputFiles(design, board, book));
  const key = cacheKey([digest, options.seed, options.trials, design.board, design.revision, board.identity.document]);
  const known = options.fresh ? undefined : kept(key);
  const findings = known ?? find(board, { seed: options.seed, trials: options.trials, digest, tool: version });
  if (!known) keep(key, findings);
  return { design, board, findings };
}

/** What the digest is over: the revision's own files, and the methods and the policy that it uses. */
function inputFiles(design: DesignFolder, board: Board, book: Book): DigestFile[] {
  const methods = [...new Set(board.circuits.flatMap(({ method }) => (method ? [method.id] : [])))];
  return [
    ...[...design.files].map(([name, bytes]) => ({ name, bytes })),
    ...methods.map((id) => ({ name: `methods/${id}.yaml`, bytes: book.files.get(id)! })),
    ...(board.policy ? [{ name: `derating/${board.policy.id}.yaml`, bytes: book.files.get(board.policy.id)! }] : []),
  ];
}

/** Every revision that was asked for, as a packet or as the reason why there is none. */
export async function calculateAll(options: Options = current): Promise<Calculated[]> {
  const book = loadHandbook();
  return readDesigns(options.designs, options.only).map((design) => packetFor(design, book, options));
}

function packetFor(design: DesignFolder, book: Book, options: Options): Calculated {
  const watch = [...design.files.keys()].map((name) => join(design.folder, name));
  const { board, revision } = design;
  const found = calculate(design, book, options);
  if ('failure' in found) return { board, revision, failure: found.failure, watch };
  const previous = supersededBy(found, book, options);
  const packet = packetOf(found.board, found.findings, previous ? { previous } : {});
  return { board, revision, packet, watch, files: packetFiles(found.board, found.findings) };
}

/** The revision that this one replaces, if it stands beside it and can be calculated. */
function supersededBy(
  { design, board }: Revision,
  book: Book,
  options: Options,
): { board: Board; findings: Findings } | undefined {
  const name = board.identity.supersedes;
  if (!name) return undefined;
  const other = readDesigns(options.designs).find((d) => d.board === design.board && d.revision === name);
  const found = other && calculate(other, book, options);
  return found && 'board' in found ? found : undefined;
}
