import { copyFile, link, lstat, mkdir, readdir } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import { outputError } from './output-error.ts';

/**
 * Brings packets that this run did not build over from the earlier output: every file whose path `kept` accepts and
 * that the new build does not hold already. Hard links where the disk has them (no second copy of a 5 MB PDF), else
 * copies. A symbolic link is not followed or kept: nothing here writes one.
 * @param kept  is asked with paths such as `orchard-cart/rev-a/packet.pdf`, always with forward slashes
 * @returns the paths that were brought over, sorted
 * @throws OutputError when the disk refuses; the earlier output is only read
 * @example keepEarlier('dist', building, keepFolders(['orchard-cart/rev-a', '_astro']))
 */
export async function keepEarlier(
  earlier: string,
  building: string,
  kept: (path: string) => boolean,
): Promise<string[]> {
  try {
    const paths = (await filesIn(earlier)).filter(kept);
    const brought: string[] = [];
    for (const path of paths) if (await bring(join(earlier, path), join(building, path))) brought.push(path);
    return brought;
  } catch (error) {
    throw outputError(error, 'Keeping the packets of other boards', `${earlier} is as it was.`);
  }
}

/** Accepts what lies in one of the folders, at any depth. */
export const keepFolders =
  (folders: readonly string[]) =>
  (path: string): boolean =>
    folders.some((folder) => path.startsWith(`${folder}/`));

/** Paths of all regular files under `root`, with forward slashes, sorted; none when the folder does not exist. */
export async function filesIn(root: string): Promise<string[]> {
  const entries = await readdir(root, { recursive: true, withFileTypes: true }).catch(
    (error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return [];
      throw error;
    },
  );
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

async function bring(from: string, to: string): Promise<boolean> {
  if (await taken(to)) return false;
  await mkdir(dirname(to), { recursive: true });
  await link(from, to).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOSPC' || error.code === 'EROFS') throw error;
    return copyFile(from, to);
  });
  return true;
}

async function taken(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}
