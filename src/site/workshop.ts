import { mkdir, readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isAlive } from '../archive/output-lock.ts';

const folder = fileURLToPath(new URL('../../.cache/', import.meta.url));
const ours = /^building-(\d+)$/;

/**
 * An empty folder to build in, this process's own. It lies in the tool's folder, whatever the output is: for an output outside of
 * it, the site's builder would put its intermediate files into one place for all runs, and could not move them to another disk.
 * Clears away what killed runs left.
 */
export async function openWorkshop(): Promise<string> {
  const entries = await readdir(folder).catch(() => []);
  const left = entries.filter((name) => {
    const pid = ours.exec(name)?.[1];
    return pid !== undefined && (Number(pid) === process.pid || !isAlive(Number(pid)));
  });
  for (const name of left) await rm(join(folder, name), { recursive: true, force: true });
  const own = join(folder, `building-${process.pid}`);
  await mkdir(own, { recursive: true });
  return own;
}
