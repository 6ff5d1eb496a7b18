import { join, relative } from 'node:path';
import { find } from '../analysis/find.ts';
import type { Findings } from '../analysis/findings.ts';
import { undefinedResults } from '../analysis/undefined-results.ts';
import { type DigestFile, inputsDigest } from '../archive/digest.ts';
import { type Cautions, cautionsOf } from '../safety/cautions-of.ts';
import type { SafetyData } from '../safety/safety-data.ts';
import { safetyProblems } from '../safety/safety-problems.ts';
import type { Board } from '../spec/board.ts';
import { showProblems } from '../spec/problem.ts';
import { readSpec } from '../spec/read-spec.ts';
import type { DesignFolder } from './designs.ts';
import { cacheKey, keep, kept } from './findings-cache.ts';
import { changedAfterRelease } from './frozen.ts';
import type { loadHandbook } from './handbook-files.ts';
import type { Options } from './options.ts';
import { withCompanions } from './read-companions.ts';
import { loadSafety } from './safety-files.ts';
import { threaded } from './simulate-threads.ts';
import { version } from './version.ts';

/** A revision that was calculated, before any packet is made of it. */
export interface Revision {
  readonly design: DesignFolder;
  readonly board: Board;
  readonly findings: Findings;
  readonly cautions: Cautions;
  /** What the digest in the findings is over. */
  readonly inputs: readonly DigestFile[];
}
export interface Failure {
  readonly design: DesignFolder;
  /** Plain text with file, line and column. */
  readonly failure: string;
}

export type Book = ReturnType<typeof loadHandbook>;

let tables: SafetyData | undefined;
/** The cautions and their tables, read once. */
function safety(): SafetyData {
  tables ??= loadSafety();
  return tables;
}

/** Reads and calculates one revision; refuses one that was released with other inputs. */
export function calculate(design: DesignFolder, book: Book, options: Options): Revision | Failure {
  return calculateAs(design, book, options, changedAfterRelease);
}

/** Reads and calculates a revision for comparison only, as it stands. */
export function calculateAsItStands(design: DesignFolder, book: Book, options: Options): Revision | Failure {
  return calculateAs(design, book, options, () => undefined);
}

function calculateAs(
  design: DesignFolder,
  book: Book,
  options: Options,
  refusal: typeof changedAfterRelease,
): Revision | Failure {
  const pathOf = (name: string): string => relative(process.cwd(), join(design.folder, name));
  const file = pathOf('spec.yaml');
  const {
    board: specified,
    problems,
    locate,
  } = readSpec(design.files.get('spec.yaml')!, { file, board: design.board, revision: design.revision }, book);
  if (!specified) return { design, failure: showProblems(problems) };
  const { board, problems: beside } = withCompanions(specified, design, pathOf);
  if (beside.length) return { design, failure: showProblems(beside) };
  const unsafe = safetyProblems(design.files.get('spec.yaml')!, file, safety());
  if (unsafe.length) return { design, failure: showProblems(unsafe) };
  const undefinedOnes = undefinedResults(board);
  if (undefinedOnes.length)
    return { design, failure: showProblems(undefinedOnes.map(({ id, ...what }) => locate(id, what))) };
  const inputs = inputFiles(design, board, book);
  const refused = refusal(design, board, inputs, locate);
  if (refused) return { design, failure: showProblems([refused]) };
  const digest = inputsDigest(inputs);
  const key = cacheKey([
    digest,
    options.seed,
    options.trials ?? 'for digits',
    design.board,
    design.revision,
    board.identity.document,
  ]);
  const known = options.fresh ? undefined : kept(key);
  const calculated =
    known ?? find(board, { seed: options.seed, trials: options.trials, digest, tool: version, counting: threaded() });
  if (!known) keep(key, calculated);
  const cautions = cautionsOf(board, calculated, safety());
  return { design, board, findings: { ...calculated, cautions: cautions.findings }, cautions, inputs };
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
