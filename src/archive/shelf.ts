import { mkdir, readdir, readFile, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type DigestFile, digestListing } from './digest.ts';
import { filesIn, keepEarlier } from './keep-earlier.ts';
import { unpackOnce } from './unpack-once.ts';

/** Something finished that was kept, and is whole. */
export interface Shelved {
  /** What was put beside the files, as JSON. */
  readonly about: unknown;
  /** Paths of the files, with forward slashes. */
  readonly files: readonly string[];
  /** Puts the files below a folder: as hard links where the disk has them, else as copies. */
  bringTo(folder: string): Promise<void>;
}

/** Entries of one thing that stay: going back to the trial before last costs nothing. */
const most = 3;
const [content, listing, about] = ['files', 'listing.sha256', 'about.json'];

/**
 * What was kept under a key on a shelf, a folder for the states of one thing. Every file is read and compared with its digest:
 * an entry that was damaged, by hand or by a full disk, is taken off and as good as none.
 */
export async function takeFrom(shelf: string, key: string): Promise<Shelved | undefined> {
  const entry = join(shelf, key);
  const stated = await readFile(join(entry, listing), 'utf8').catch(() => undefined);
  if (stated === undefined) return undefined;
  try {
    const names = await filesIn(join(entry, content));
    if ((await listingOf(entry, names)) !== stated) throw new Error('damaged');
    const said: unknown = JSON.parse(await readFile(join(entry, about), 'utf8'));
    await utimes(entry, new Date(), new Date()).catch(() => undefined);
    return {
      about: said,
      files: names,
      bringTo: async (folder) => void (await keepEarlier(join(entry, content), folder, () => true)),
    };
  } catch {
    await rm(entry, { recursive: true, force: true }).catch(() => undefined);
    return undefined;
  }
}

/**
 * Keeps files under a key, and drops what was kept longest ago. A shelf that cannot be written costs time later and nothing now.
 * @param root  folder that holds the files
 * @param accept  which of them are kept
 */
export async function putOn(
  shelf: string,
  key: string,
  root: string,
  accept: (path: string) => boolean,
  said: unknown,
): Promise<void> {
  try {
    await unpackOnce(join(shelf, key), async (into) => {
      await mkdir(join(into, content));
      const names = await keepEarlier(root, join(into, content), accept);
      await writeFile(join(into, about), JSON.stringify(said));
      await writeFile(join(into, listing), await listingOf(into, names));
    });
    await dropOldest(shelf);
  } catch {
    return;
  }
}

async function listingOf(entry: string, names: readonly string[]): Promise<string> {
  const files: DigestFile[] = [{ name: about, bytes: await readFile(join(entry, about)) }];
  let text = digestListing(files);
  for (const name of names) {
    text += digestListing([{ name: `${content}/${name}`, bytes: await readFile(join(entry, content, name)) }]);
  }
  return text;
}

async function dropOldest(shelf: string): Promise<void> {
  const names = (await readdir(shelf)).filter((name) => !name.startsWith('.'));
  const dated = await Promise.all(names.map(async (name) => ({ name, used: (await stat(join(shelf, name))).mtimeMs })));
  const old = dated.sort((a, b) => b.used - a.used).slice(most);
  for (const { name } of old) await rm(join(shelf, name), { recursive: true, force: true });
}
