import { mkdir, readFile, stat, symlink, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { filesIn, keepEarlier, keepFolders } from '../../src/archive/keep-earlier.ts';
import { temporaryFolder } from './fixtures/temporary-folder.ts';

let earlier: string;
let building: string;
beforeEach(async () => {
  const parent = await temporaryFolder();
  [earlier, building] = [join(parent, 'dist'), join(parent, 'new')];
  await write(earlier, {
    'cart/rev-a/packet.pdf': 'old',
    'cart/rev-b/packet.pdf': 'old',
    'cart/rev-a2/x': 'old',
    'index.html': 'old',
  });
  await write(building, { 'cart/rev-b/packet.pdf': 'new', 'index.html': 'new' });
});

async function write(root: string, files: Record<string, string>): Promise<void> {
  for (const [path, text] of Object.entries(files)) {
    await mkdir(dirname(join(root, path)), { recursive: true });
    await writeFile(join(root, path), text);
  }
}
const read = (path: string): Promise<string> => readFile(join(building, path), 'utf8');

test('what this run did not build comes over; what it did build stays', async () => {
  const brought = await keepEarlier(earlier, building, keepFolders(['cart/rev-a', 'cart/rev-b']));
  expect(brought).toEqual(['cart/rev-a/packet.pdf']);
  expect(await filesIn(building)).toEqual(['cart/rev-a/packet.pdf', 'cart/rev-b/packet.pdf', 'index.html']);
  expect([await read('cart/rev-a/packet.pdf'), await read('cart/rev-b/packet.pdf')]).toEqual(['old', 'new']);
});

test('a kept file takes no second place on the disk', async () => {
  await keepEarlier(earlier, building, keepFolders(['cart/rev-a']));
  const [one, other] = await Promise.all([
    stat(join(earlier, 'cart/rev-a/packet.pdf')),
    stat(join(building, 'cart/rev-a/packet.pdf')),
  ]);
  expect(other.ino).toBe(one.ino);
});

test('a symbolic link is neither kept nor followed', async () => {
  await symlink('/etc/hosts', join(earlier, 'cart/rev-a/link'));
  expect(await keepEarlier(earlier, building, keepFolders(['cart/rev-a']))).toEqual(['cart/rev-a/packet.pdf']);
});

test('without an earlier output there is nothing to keep', async () => {
  expect(await keepEarlier(join(earlier, 'no', 'such'), building, () => true)).toEqual([]);
});
