import { lstatSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { releaseRecord } from './frozen.ts';

/** One revision's folder as it stands on disk. */
export interface DesignFolder {
  readonly board: string;
  readonly revision: string;
  readonly folder: string;
  /** Files that belong to the revision, by name: `spec.yaml`, and `parts.csv`, `notes.mdx`, `bench.csv` where they exist. */
  readonly files: ReadonlyMap<string, string>;
  /** What its release record says, once it was released. */
  readonly released?: string;
}

/** A folder of designs that cannot be read; the message says what to do. */
export class DesignsError extends Error {
  override readonly name = 'DesignsError';
}

const belonging = ['spec.yaml', 'parts.csv', 'notes.mdx', 'bench.csv'];
const folderName = /^[A-Za-z0-9][A-Za-z0-9._-]*$/;

/**
 * Every `<board>/<revision>/spec.yaml` below a folder, in the order of names.
 * @param only  `board` or `board/revision`; empty means all. A name that matches nothing is a DesignsError.
 */
export function readDesigns(root: string, only: readonly string[] = []): DesignFolder[] {
  const found = foldersIn(root, `the designs folder ${root}`).flatMap((board) =>
    foldersIn(join(root, board)).flatMap((revision): DesignFolder[] => {
      const folder = join(root, board, revision);
      const files = new Map(belonging.flatMap((name) => readIfThere(root, join(folder, name), name)));
      if (!files.has('spec.yaml')) return [];
      const [record] = readIfThere(root, join(folder, releaseRecord), releaseRecord);
      return [{ board, revision, folder, files, ...(record ? { released: record[1] } : {}) }];
    }),
  );
  for (const name of only) {
    if (found.some((design) => matches(design, name))) continue;
    const known = found.map(({ board, revision }) => `${board}/${revision}`).join(', ') || 'none';
    throw new DesignsError(
      `found no design \`${name}\` in ${root}; expected a board or board/revision. There: ${known}.`,
    );
  }
  return only.length ? found.filter((design) => only.some((name) => matches(design, name))) : found;
}

const matches = ({ board, revision }: DesignFolder, name: string): boolean =>
  name === board || name === `${board}/${revision}`;

function foldersIn(path: string, what = path): string[] {
  try {
    return readdirSync(path, { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && folderName.test(entry.name))
      .map(({ name }) => name)
      .sort();
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new DesignsError(
      `cannot read ${what} (${code ?? 'unknown reason'}); expected a folder with <board>/<revision>/spec.yaml in it. Name another with --designs <folder>.`,
    );
  }
}

/** A link that leads out of the designs folder is not followed: a spec must not pull in what its author cannot see. */
function readIfThere(root: string, path: string, name: string): [string, string][] {
  try {
    if (lstatSync(path).isSymbolicLink() && relative(realpathSync(root), realpathSync(path)).split(sep)[0] === '..') {
      throw new DesignsError(
        `${path} is a link that leads out of ${root}; expected a file in it. Copy the file there.`,
      );
    }
    return [[name, readFileSync(path, 'utf8')]];
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return [];
    if (error instanceof DesignsError) throw error;
    throw new DesignsError(`cannot read ${path} (${code ?? String(error)}); expected a file of text.`);
  }
}
