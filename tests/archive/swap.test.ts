import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cp, mkdir, readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeEach, describe, expect, test } from 'vitest';
import { outputError } from '../../src/archive/output-error.ts';
import { abandonOutput, beginOutput, marker, recoverOutput, swapIn } from '../../src/archive/swap.ts';
import { temporaryFolder } from './fixtures/temporary-folder.ts';

const deadPid = 2 ** 30; // beyond the largest process number of every system

let parent: string;
let out: string;
beforeEach(async () => {
  parent = await temporaryFolder();
  out = join(parent, 'dist');
});

async function build(text: string): Promise<void> {
  await writeFile(join(await beginOutput(out), 'page.html'), text);
}
const page = (): Promise<string> => readFile(join(out, 'page.html'), 'utf8');

describe('an output folder', () => {
  test('is as it was until the new one is whole, then is the new one and leaves nothing beside it', async () => {
    await build('old');
    await swapIn(out);
    await build('new');
    expect(await page()).toBe('old');
    await swapIn(out);
    expect(await page()).toBe('new');
    expect(await readdir(parent)).toEqual(['dist']);
  });
  test('stays when a build is given up', async () => {
    await build('old');
    await swapIn(out);
    await build('new');
    await abandonOutput(out);
    expect(await page()).toBe('old');
    expect(await readdir(parent)).toEqual(['dist']);
  });
  test('is not replaced when it holds files of somebody else', async () => {
    await mkdir(out);
    await writeFile(join(out, 'thesis.tex'), 'years of work');
    await expect(beginOutput(out)).rejects.toThrow(
      `${out} holds files that Copperplate did not write (there is no ${marker} in it), and a run replaces the whole ` +
        'folder. Name a new or empty folder with --out, or move the files away.',
    );
    expect(await readdir(parent)).toEqual(['dist']);
  });
  test('may be an empty folder, but not a file', async () => {
    await mkdir(out);
    await build('new');
    await swapIn(out);
    expect(await page()).toBe('new');
    await expect(beginOutput(join(out, 'page.html'))).rejects.toThrow('page.html is a file. Name a folder with --out.');
  });
  test('below a file is refused in words', async () => {
    await writeFile(join(parent, 'file'), '');
    await expect(beginOutput(join(parent, 'file', 'dist'))).rejects.toThrow(
      /^Preparing the output folder failed at .*: a file stands/,
    );
  });
});

describe('after a run that was killed', () => {
  const building = (pid = deadPid): string => join(parent, `.dist.new-${pid}`);
  const aside = (pid = deadPid): string => join(parent, `.dist.old-${pid}`);
  beforeEach(async () => {
    await build('old');
    await swapIn(out);
  });
  const leaveBuild = async (pid = deadPid): Promise<void> => {
    await cp(out, building(pid), { recursive: true });
    await writeFile(join(building(pid), 'page.html'), 'new');
  };

  test('while building, the old output stays', async () => {
    await leaveBuild();
    await recoverOutput(out);
    expect(await page()).toBe('old');
    expect(await readdir(parent)).toEqual(['dist']);
  });
  test('between the two renames, the new output is moved in', async () => {
    await leaveBuild();
    await rename(out, aside());
    await recoverOutput(out);
    expect(await page()).toBe('new');
    expect(await readdir(parent)).toEqual(['dist']);
  });
  test('while clearing away, the new output stays', async () => {
    await cp(out, aside(), { recursive: true });
    await writeFile(join(out, 'page.html'), 'new');
    await recoverOutput(out);
    expect(await page()).toBe('new');
    expect(await readdir(parent)).toEqual(['dist']);
  });
  test('the folder of a run that is alive is left alone', async () => {
    await leaveBuild(process.ppid);
    await recoverOutput(out);
    expect((await readdir(parent)).sort()).toEqual([`.dist.new-${process.ppid}`, 'dist']);
  });
});

test('killed at ten moments, the output always holds one whole state', { timeout: 60_000 }, async () => {
  const script = fileURLToPath(new URL('fixtures/swap-forever.ts', import.meta.url));
  let latest = 0;
  for (let round = 0; round < 10; round += 1) {
    const child = spawn(process.execPath, [script, out, String(latest + 1)], {
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    const gone = once(child, 'exit');
    while (Number(await oneFile()) <= latest) await pause(2);
    await pause(round * 3.7);
    child.kill('SIGKILL');
    await gone;
    await recoverOutput(out);
    expect(await readdir(parent)).toEqual(['dist']);
    const names = (await readdir(out)).filter((name) => name !== marker);
    const numbers = new Set(await Promise.all(names.map((name) => readFile(join(out, name), 'utf8'))));
    expect([names.length, numbers.size]).toEqual([20, 1]);
    expect(Number([...numbers][0])).toBeGreaterThan(latest);
    latest = Number([...numbers][0]);
  }
});

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
const oneFile = (): Promise<string> => readFile(join(out, '0.txt'), 'utf8').catch(() => '');

test.each([
  [
    'ENOSPC',
    'Building failed at /mnt/x: the disk is full. Free some space and run the command again. dist is as it was.',
  ],
  [
    'EROFS',
    'Building failed at /mnt/x: the disk can only be read. Name a folder that can be written with --out. dist is as it was.',
  ],
])('%s is said in words', (code, message) => {
  const error = Object.assign(new Error(code), { code, path: '/mnt/x' });
  expect(outputError(error, 'Building', 'dist is as it was.')).toHaveProperty('message', message);
});

test('an error that is not the disk’s comes through unchanged', () => {
  const error = new TypeError('bug');
  expect(outputError(error, 'Building', '')).toBe(error);
});
