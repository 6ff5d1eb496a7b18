import { inputsDigest, sha256 } from '../archive/digest.ts';
import type { Book } from './calculate.ts';
import type { DesignFolder } from './designs.ts';
import type { Options } from './options.ts';
import { codeDigest } from './tool-files.ts';

/** What decides on a packet beside the designs: the tool, the handbook, what was asked for, and what prints. */
export function surroundings(book: Book, options: Options, browser: string): string {
  const methods = [...book.files].map(([id, bytes]) => ({ name: `${id}.yaml`, bytes }));
  const asked = [options.seed, options.trials ?? 'for digits', options.paper, process.env.SOURCE_DATE_EPOCH ?? ''];
  return sha256([codeDigest(), process.version, inputsDigest(methods), ...asked, browser].join('\n'));
}

/**
 * Digest of all that a revision's finished packet follows from. Reads the spec as text only, so it is had in no time.
 * @param all  every design in the folder; the packet says what changed since the one that it replaces
 */
export function revisionKey(design: DesignFolder, all: readonly DesignFolder[], around: string): string {
  const before = replacedBy(design, all).map(stateOf);
  return sha256([around, stateOf(design), ...before].join('\n'));
}

const stateOf = ({ board, revision, files }: DesignFolder): string =>
  `${board}/${revision} ${inputsDigest([...files].map(([name, bytes]) => ({ name, bytes })))}`;

/** The revision that a spec says it replaces; all of the board where the line is written in some unusual way. */
function replacedBy({ board, revision, files }: DesignFolder, all: readonly DesignFolder[]): DesignFolder[] {
  const spec = files.get('spec.yaml')!;
  if (!spec.includes('supersedes')) return [];
  const named = /^supersedes:[ \t]*(["']?)([A-Za-z0-9._-]+)\1[ \t]*(?:#.*)?\r?$/m.exec(spec)?.[2];
  const others = all.filter((other) => other.board === board && other.revision !== revision);
  return named === undefined ? others : others.filter((other) => other.revision === named);
}
