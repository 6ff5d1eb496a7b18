import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { OutputError, outputError } from './output-error.ts';
import { clearDeadLock, freeLock, isAlive, takeLock } from './output-lock.ts';

/**
 * The output folder is never written in place. A run builds beside it and swaps at the end, so that whoever looks at
 * any moment, also after a crash, finds a whole earlier or a whole later state:
 *
 *     .dist.new-4711   being built by process 4711
 *     dist             what people open
 *     .dist.old-4711   the former one, for the moment of the swap
 *     .dist.lock       number of the process that builds; others wait for it
 *
 * Between the two renames of a swap there is no `dist` for some microseconds; a run killed just there is mended by the
 * next one, which finds the complete new folder and moves it in.
 */
interface Names {
  readonly out: string;
  readonly parent: string;
  readonly building: (pid: number) => string;
  readonly aside: (pid: number) => string;
  readonly lock: string;
  readonly leftover: RegExp;
}

/** Stands in every output folder, so that a wrong `--out` never replaces a folder of somebody's own files. */
export const marker = '.copperplate';
const markerText =
  'Written by Copperplate. The whole folder is replaced by the next run: keep nothing of your own in it.\n';

/**
 * Mends what a killed run left, checks that the output folder may be replaced, and makes an empty folder to build into.
 * @param out  absolute or relative path of the output folder; need not exist
 * Waits while another run builds into the same folder.
 * @param waiting  is told which process is waited for
 * @returns path of the folder to build into, on the same disk
 * @throws OutputError when `out` holds files that this project did not write, or the disk refuses
 */
export async function beginOutput(out: string, pid = process.pid, waiting?: (pid: number) => void): Promise<string> {
  const names = namesFor(out);
  return guarded('Preparing the output folder', names, async () => {
    await mkdir(names.parent, { recursive: true });
    await takeLock(names.lock, pid, waiting);
    try {
      await recoverOutput(out);
      await refuseForeign(names.out);
      const building = names.building(pid);
      await rm(building, { recursive: true, force: true });
      await mkdir(building);
      await writeFile(join(building, marker), markerText);
      return building;
    } catch (error) {
      await abandonOutput(out, pid);
      throw error;
    }
  });
}

/**
 * Puts the finished build in the place of the output folder.
 * @throws OutputError; the earlier output is back in its place then
 */
export async function swapIn(out: string, pid = process.pid): Promise<void> {
  const names = namesFor(out);
  await guarded('Swapping in the new output', names, async () => {
    // A build that was emptied with `rm -rf` by its tools has lost the marker.
    await writeFile(join(names.building(pid), marker), markerText);
    const hadOld = await isThere(names.out);
    if (hadOld) await rename(names.out, names.aside(pid));
    try {
      await rename(names.building(pid), names.out);
    } catch (error) {
      if (hadOld) await rename(names.aside(pid), names.out);
      throw error;
    }
    await rm(names.aside(pid), { recursive: true, force: true });
    await freeLock(names.lock, pid);
  });
}

/**
 * Throws away what was built so far; the output folder stays as it is. What cannot be removed now, the next run removes:
 * the failure that led here is the one to report.
 */
export async function abandonOutput(out: string, pid = process.pid): Promise<void> {
  const { building, lock } = namesFor(out);
  await rm(building(pid), { recursive: true, force: true }).catch(() => undefined);
  await freeLock(lock, pid).catch(() => undefined);
}

/**
 * Mends what killed runs left beside the output folder. Folders of runs that are still alive are left alone.
 * Call it before anything reads the earlier output; `beginOutput` does.
 */
export async function recoverOutput(out: string): Promise<void> {
  const names = namesFor(out);
  for (const pid of await deadRuns(names)) {
    const [building, aside] = [names.building(pid), names.aside(pid)];
    // The old folder is set aside only when the new one is complete, and the new one vanishes only by moving in.
    if ((await isThere(aside)) && !(await isThere(names.out))) {
      await rename((await isThere(building)) ? building : aside, names.out);
    }
    await rm(building, { recursive: true, force: true });
    await rm(aside, { recursive: true, force: true });
  }
  await clearDeadLock(names.lock, process.pid);
}

function namesFor(out: string): Names {
  const path = resolve(out);
  const [parent, name] = [dirname(path), basename(path)];
  const beside = (what: string) => (pid: number) => join(parent, `.${name}.${what}-${pid}`);
  const literal = name.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return {
    out: path,
    parent,
    building: beside('new'),
    aside: beside('old'),
    lock: join(parent, `.${name}.lock`),
    leftover: new RegExp(`^\\.${literal}\\.(?:new|old)-(\\d+)$`),
  };
}

async function deadRuns({ parent, leftover }: Names): Promise<Set<number>> {
  const entries = await readdir(parent).catch(() => []);
  const pids = entries.flatMap((entry) => leftover.exec(entry)?.[1] ?? []).map(Number);
  return new Set(pids.filter((pid) => pid === process.pid || !isAlive(pid)));
}

async function refuseForeign(out: string): Promise<void> {
  if (!(await isThere(out))) return;
  if (!(await stat(out)).isDirectory()) throw new OutputError(`${out} is a file. Name a folder with --out.`);
  const known = await readFile(join(out, marker), 'utf8').catch(() => '');
  if (known === markerText || (await readdir(out)).length === 0) return;
  throw new OutputError(
    `${out} holds files that Copperplate did not write (there is no ${marker} in it), and a run replaces the whole folder. ` +
      'Name a new or empty folder with --out, or move the files away.',
  );
}

async function isThere(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    (error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return false;
      throw error;
    },
  );
}

async function guarded<T>(doing: string, { out }: Names, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw outputError(error, doing, (await isThere(out).catch(() => false)) ? `${out} is as it was.` : '');
  }
}
