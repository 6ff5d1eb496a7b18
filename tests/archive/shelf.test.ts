import { appendFile, mkdir, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { putOn, takeFrom } from '../../src/archive/shelf.ts';
import { temporaryFolder } from './fixtures/temporary-folder.ts';

let shelf: string;
let root: string;
beforeEach(async () => {
  const parent = await temporaryFolder();
  [shelf, root] = [join(parent, 'shelf/cart'), join(parent, 'dist')];
  await mkdir(join(root, 'deep'), { recursive: true });
  await writeFile(join(root, 'a.html'), 'a');
  await writeFile(join(root, 'deep/b.pdf'), 'b');
  await writeFile(join(root, 'other.txt'), 'other');
  await putOn(shelf, 'key', root, (path) => path !== 'other.txt', { pages: 3 });
});

test('gives back what was put there, and what was said of it', async () => {
  await rm(root, { recursive: true });
  const shelved = await takeFrom(shelf, 'key');
  expect(shelved).toMatchObject({ about: { pages: 3 }, files: ['a.html', 'deep/b.pdf'] });
  await shelved!.bringTo(root);
  expect(await readFile(join(root, 'deep/b.pdf'), 'utf8')).toBe('b');
  expect(await readdir(root)).toEqual(['a.html', 'deep']);
});

test('has nothing under another key', async () => {
  expect(await takeFrom(shelf, 'other')).toBeUndefined();
});

test.each<[string, (entry: string) => Promise<void>]>([
  ['a changed file', (entry) => writeFile(join(entry, 'files/a.html'), 'A')],
  ['a file that grew', (entry) => appendFile(join(entry, 'files/deep/b.pdf'), ' ')],
  ['a missing file', (entry) => rm(join(entry, 'files/a.html'))],
  ['a file too many', (entry) => writeFile(join(entry, 'files/c.html'), 'c')],
  ['changed words about it', (entry) => writeFile(join(entry, 'about.json'), '{"pages":4}')],
  ['a changed listing', (entry) => writeFile(join(entry, 'listing.sha256'), '')],
])('%s is noticed, and the entry taken off', async (_, damage) => {
  await damage(join(shelf, 'key'));
  expect(await takeFrom(shelf, 'key')).toBeUndefined();
  expect(await readdir(shelf)).toEqual([]);
});

test('a change in the output reaches through a hard link and is noticed too', async () => {
  await writeFile(join(root, 'a.html'), 'scribbled over');
  expect(await takeFrom(shelf, 'key')).toBeUndefined();
});

test('keeps the three that were used last', async () => {
  for (const [i, key] of ['one', 'two', 'three'].entries()) {
    await utimes(join(shelf, i === 0 ? 'key' : (['one', 'two'] as const)[i - 1]!), i, i);
    await putOn(shelf, key, root, () => true, i);
  }
  expect((await readdir(shelf)).sort()).toEqual(['one', 'three', 'two']);
});

test('a shelf that cannot be written costs nothing', async () => {
  await writeFile(join(root, 'file'), '');
  await expect(putOn(join(root, 'file/below'), 'key', root, () => true, {})).resolves.toBeUndefined();
});
