import { access, mkdir, mkdtemp, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/**
 * Makes sure that `folder` exists with everything `fill` puts there. Filled under a temporary name beside it and
 * renamed when complete: a crash leaves no half-filled folder, and two runs at once leave one whole one.
 * @param fill  writes the files into the folder that it is given; called only when `folder` is missing
 * @throws what `fill` or the file system throws; the temporary folder is gone then
 */
export async function unpackOnce(folder: string, fill: (into: string) => Promise<void>): Promise<string> {
  if (await exists(folder)) return folder;
  await mkdir(dirname(folder), { recursive: true });
  const temporary = await mkdtemp(join(dirname(folder), `.${basename(folder)}-`));
  try {
    await fill(temporary);
    await rename(temporary, folder);
  } catch (error) {
    // Another run may have been first: its folder is as good as ours.
    if (!(await exists(folder))) throw error;
  } finally {
    await rm(temporary, { recursive: true, force: true });
  }
  return folder;
}

export async function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}
