import type { Loader, LoaderContext } from 'astro/loaders';
import type { Calculated, StoredRevision } from './calculated.ts';

/**
 * Loads every revision that `calculate` gives into the store, one entry each. While pages are being watched it calculates again
 * when a file changes; a spec that fails then keeps its last good packet, with the message beside it.
 */
export function packetLoader(calculate: () => Promise<readonly Calculated[]>): Loader {
  return {
    name: 'copperplate-packets',
    async load(context) {
      const watched = await refresh(context, calculate);
      if (context.watcher) watch(context, calculate, watched);
    },
  };
}

/** Loads revisions that were handed over by the command that builds the site. */
export function listLoader(revisions: readonly StoredRevision[]): Loader {
  return {
    name: 'copperplate-packets',
    load: async ({ store }) => {
      store.clear();
      for (const one of revisions) store.set({ id: `${one.board}/${one.revision}`, data: { ...one } });
    },
  };
}

/** @returns every path the packets were calculated from */
async function refresh(
  { store, watcher }: LoaderContext,
  calculate: () => Promise<readonly Calculated[]>,
): Promise<Set<string>> {
  const revisions = await calculate();
  const known = new Set(revisions.map(idOf));
  for (const id of store.keys()) if (!known.has(id)) store.delete(id);
  for (const revision of revisions) {
    const last = watcher ? (store.get(idOf(revision))?.data as StoredRevision | undefined) : undefined;
    // A plain copy: the store may keep no reference into the engine's data.
    store.set({ id: idOf(revision), data: { ...stored(revision, last) } });
  }
  return new Set(revisions.flatMap((revision) => revision.watch ?? []));
}

/** What is kept of a revision; a failure keeps the last good packet, where there is one. */
export function stored(revision: Calculated, last?: StoredRevision): StoredRevision {
  const { board, revision: name } = revision;
  if ('packet' in revision) {
    const { packet, files } = revision;
    return { board, revision: name, packet, files };
  }
  const good = last?.packet ? { packet: last.packet } : {};
  return { board, revision: name, ...good, files: last?.files ?? {}, failure: revision.failure };
}

const idOf = ({ board, revision }: Calculated): string => `${board}/${revision}`;

function watch(context: LoaderContext, calculate: () => Promise<readonly Calculated[]>, paths: Set<string>): void {
  const { watcher, logger } = context;
  let running: Promise<unknown> = Promise.resolve();
  let waiting = false;
  watcher?.add([...paths]);
  const again = (): void => {
    if (waiting) return;
    waiting = true;
    running = running.then(async () => {
      waiting = false;
      for (const path of await refresh(context, calculate)) {
        if (!paths.has(path)) watcher?.add(path);
        paths.add(path);
      }
    });
    running = running.catch((error: unknown) => logger.error(String(error)));
  };
  const changed = (path: string): void => {
    if (concerns(path, paths)) again();
  };
  for (const event of ['add', 'change', 'unlink']) watcher?.on(event, changed);
}

/** Whether a change of `path` changes a packet: it is one of its files, stands in the same folder as one, or is a spec. */
export function concerns(path: string, watched: ReadonlySet<string>): boolean {
  if (watched.has(path) || /[\\/]spec\.yaml$/.test(path)) return true;
  const folder = path.slice(0, Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
  return [...watched].some((known) => known.startsWith(folder) && !/[\\/]/.test(known.slice(folder.length)));
}
