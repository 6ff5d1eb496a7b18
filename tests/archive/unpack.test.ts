import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { unpackFallbackFont } from '../../src/archive/shipped-chromium.ts';
import { unpackOnce } from '../../src/archive/unpack-once.ts';
import { untar } from '../../src/archive/untar.ts';
import { temporaryFolder } from './fixtures/temporary-folder.ts';

test('the fallback font comes out of the shipped archive whole', async () => {
  const folder = await unpackFallbackFont(await temporaryFolder());
  expect(await readdir(folder)).toEqual(['OpenSans-Regular.ttf']);
  const font = await readFile(join(folder, 'OpenSans-Regular.ttf'));
  expect(font.readUInt32BE(0)).toBe(0x00010000); // TrueType outlines
  expect(font.length % 4).toBe(0); // its tables are padded to four octets, the last one too
});

test('runs at the same time leave one whole folder, and nothing else', async () => {
  const cache = await temporaryFolder();
  const fill = (into: string): Promise<void> => writeFile(join(into, 'file'), 'whole');
  await Promise.all(Array.from({ length: 8 }, () => unpackOnce(join(cache, 'thing'), fill)));
  expect(await readdir(cache)).toEqual(['thing']);
  expect(await readFile(join(cache, 'thing', 'file'), 'utf8')).toBe('whole');
});

test('a failure half way leaves nothing', async () => {
  const cache = await temporaryFolder();
  const failing = async (into: string): Promise<void> => {
    await writeFile(join(into, 'file'), 'half');
    throw new Error('disk full');
  };
  await expect(unpackOnce(join(cache, 'thing'), failing)).rejects.toThrow('disk full');
  expect(await readdir(cache)).toEqual([]);
});

test('a tar archive that is cut off or damaged is refused', () => {
  const header = Buffer.alloc(512);
  header.write('font.ttf', 0);
  header.write('0000644', 100);
  header.write('00000001000', 124); // 512 in octal
  header.write('0', 156);
  expect(() => untar(header)).toThrow('Tar archive ends inside font.ttf.');
  header.write('zzz', 124);
  expect(() => untar(header)).toThrow('Tar header holds "zzz00001000" where an octal number belongs.');
});
