import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { freeLock, takeLock } from '../../src/archive/output-lock.ts';
import { temporaryFolder } from './fixtures/temporary-folder.ts';

const deadPid = 2 ** 30; // beyond the largest process number of every system
const lockPath = async () => join(await temporaryFolder(), '.dist.lock');

test('who holds it is waited for, and told of once', async () => {
  const path = await lockPath();
  await takeLock(path, process.ppid);
  const told: number[] = [];
  let mine = false;
  const taking = takeLock(path, process.pid, (pid) => told.push(pid)).then(() => {
    mine = true;
  });
  await new Promise((resolve) => setTimeout(resolve, 500));
  expect(mine).toBe(false);
  await freeLock(path, process.pid); // not ours to free
  expect(await readFile(path, 'utf8')).toBe(String(process.ppid));
  await freeLock(path, process.ppid);
  await taking;
  expect(told).toEqual([process.ppid]);
  expect(await readFile(path, 'utf8')).toBe(String(process.pid));
});

test('what a killed run left is taken over', async () => {
  const path = await lockPath();
  await writeFile(path, String(deadPid));
  await takeLock(path, process.pid, () => expect.unreachable());
  expect(await readFile(path, 'utf8')).toBe(String(process.pid));
});

test('of three runs at once into one folder none loses what another made', { timeout: 60_000 }, async () => {
  const parent = await temporaryFolder();
  const script = fileURLToPath(new URL('fixtures/add-packet.ts', import.meta.url));
  const children = ['a', 'b', 'c'].map((name) =>
    spawn(process.execPath, [script, join(parent, 'dist'), name], { stdio: ['ignore', 'ignore', 'inherit'] }),
  );
  const codes = await Promise.all(children.map(async (child) => (await once(child, 'exit'))[0] as number));
  expect(codes).toEqual([0, 0, 0]);
  expect(await readdir(parent)).toEqual(['dist']);
  expect((await readdir(join(parent, 'dist'))).filter((name) => name.endsWith('.txt')).sort()).toEqual([
    'a.txt',
    'b.txt',
    'c.txt',
  ]);
});
