import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { setTimeout as pause } from 'node:timers/promises';

/**
 * Lets one run at a time build into an output folder: two that start from the same earlier output would each swap in an output
 * without what the other made. The lock is a file that holds the number of its process; one that a killed run left is taken over.
 * @param waiting  is told once which process is waited for
 */
export async function takeLock(path: string, pid: number, waiting: (pid: number) => void = () => {}): Promise<void> {
  let told = false;
  let unreadable = 0;
  for (;;) {
    const taken = await writeFile(path, String(pid), { flag: 'wx' }).then(
      () => true,
      (error: NodeJS.ErrnoException) => {
        if (error.code === 'EEXIST') return false;
        throw error;
      },
    );
    if (taken) return;
    const holder = await holderOf(path);
    if (holder === pid) return;
    if (await clearDeadLock(path, pid)) continue;
    if (holder !== undefined) {
      if (!told) waiting(holder);
      told = true;
      await pause(200);
    } else {
      // Whoever made it is about to write its number, or was killed just there.
      unreadable += 1;
      if (unreadable > 100) await rm(path, { force: true });
      await pause(20);
    }
  }
}

/** Frees a lock that this process holds; another's stays. */
export async function freeLock(path: string, pid: number): Promise<void> {
  if ((await holderOf(path)) === pid) await rm(path, { force: true });
}

/** Removes a lock whose process is gone. */
export async function clearDeadLock(path: string, pid: number): Promise<boolean> {
  const holder = await holderOf(path);
  if (holder === undefined || isAlive(holder)) return false;
  await removeStale(path, holder, pid);
  return true;
}

/** Undefined while the file is being written, or when it is gone. */
async function holderOf(path: string): Promise<number | undefined> {
  const text = await readFile(path, 'utf8').catch(() => '');
  return /^\d+$/.test(text) ? Number(text) : undefined;
}

/** Of several that find the same dead holder, one moves the file away; who moved away a living one's puts it back. */
async function removeStale(path: string, dead: number, pid: number): Promise<void> {
  const away = `${path}-${pid}`;
  const moved = await rename(path, away).then(
    () => true,
    () => false,
  );
  if (!moved) return;
  if ((await holderOf(away)) === dead) await rm(away, { force: true });
  else await rename(away, path);
}

export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0); // signal 0 only asks
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'; // alive, but another user's
  }
}
