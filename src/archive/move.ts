import { cp, mkdir, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';

/** Moves a file or folder; to another disk as a copy. Folders above the target are made. */
export async function move(from: string, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true });
  try {
    await rename(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EXDEV') throw error;
    await cp(from, to, { recursive: true, force: true });
    await rm(from, { recursive: true });
  }
}
