import { chmod, mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { afterFailure } from '../../src/archive/browser.ts';
import { findBrowser } from '../../src/archive/find-browser.ts';
import { browserPlaces } from '../../src/archive/installed-browsers.ts';
import { temporaryFolder } from './fixtures/temporary-folder.ts';

let folder: string;
let program: string;
beforeEach(async () => {
  folder = await temporaryFolder();
  await mkdir(join(folder, 'bin'));
  program = join(folder, 'bin', 'google-chrome-stable');
  await writeFile(program, '#!/bin/sh\n');
  await chmod(program, 0o755);
});

describe('a browser to print with', () => {
  test('is the one that COPPERPLATE_BROWSER names', async () => {
    const machine = { platform: 'linux', arch: 'x64', env: { COPPERPLATE_BROWSER: program }, cache: folder };
    expect(await findBrowser(machine)).toEqual({ program, name: program, from: 'COPPERPLATE_BROWSER' });
  });
  test('is not looked for elsewhere when COPPERPLATE_BROWSER is wrong', async () => {
    const env = { COPPERPLATE_BROWSER: '/no/such/browser', PATH: join(folder, 'bin') };
    expect(await findBrowser({ platform: 'linux', arch: 'arm64', env, cache: folder })).toEqual({
      missing:
        'COPPERPLATE_BROWSER names /no/such/browser, which is not a program that can be run. Correct or unset it. ' +
        'The site is built without it; only the PDFs and the archives are missing.',
    });
  });
  test('is an installed one where the shipped one does not run', async () => {
    const machine = { platform: 'linux', arch: 'arm64', env: { PATH: join(folder, 'bin') }, cache: folder };
    expect(await findBrowser(machine)).toEqual({ program, name: 'Chrome', from: 'installed' });
  });
  test('is an installed one, with a remark, where the shipped one cannot be unpacked', async () => {
    const cache = join(program, 'below-a-file');
    const found = await findBrowser({ platform: 'linux', arch: 'x64', env: { PATH: join(folder, 'bin') }, cache });
    expect(found).toMatchObject({ program, from: 'installed' });
    expect(found).toHaveProperty('remark', expect.stringContaining(`could not be unpacked into ${cache}: ENOTDIR`));
  });
  test('when there is none, the message says what to install', async () => {
    expect(await findBrowser({ platform: 'win32', arch: 'x64', env: {}, cache: folder })).toEqual({
      missing:
        'No browser to print with. The Chromium that comes with the install runs on linux x64 only; this is win32 x64. ' +
        'No Chrome, Edge or Chromium is installed where they usually are. ' +
        'Install Chrome with "winget install Google.Chrome". ' +
        'Or set COPPERPLATE_BROWSER to the path of a Chrome, Edge or Chromium. Then run the command again. ' +
        'The site is built without it; only the PDFs and the archives are missing.',
    });
  });
});

test.each([
  ['win32', { ProgramFiles: 'C:\\Program Files' }, 'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe'],
  ['darwin', { HOME: '/Users/eng' }, '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'],
  ['linux', { PATH: '/opt/bin:/usr/bin' }, '/opt/bin/google-chrome-stable'],
])('on %s, Chrome comes before Edge and Edge before Chromium', (platform, env, first) => {
  const places = browserPlaces({ platform, env });
  expect(places[0]!.path).toBe(first);
  const names = places.map(({ name }) => name);
  expect(names.toSorted((a, b) => order(a) - order(b))).toEqual(names);
  expect(new Set(names).size).toBe(3);
});
const order = (name: string): number => ['Chrome', 'Edge', 'Chromium'].indexOf(name);

describe('after a start that failed', () => {
  const libraries = '/cache/lib';
  const noLibrary = 'chromium: error while loading shared libraries: libnss3.so: cannot open shared object file';
  const noSandbox = '<launching> chromium --no-first-run\n[FATAL:zygote_host_impl_linux.cc] No usable sandbox!';

  test('missing libraries are taken from the package, once', () => {
    expect(afterFailure({ sandbox: true }, noLibrary, libraries)).toEqual({ sandbox: true, libraries });
    expect(afterFailure({ sandbox: true, libraries }, noLibrary, libraries)).toBeUndefined();
    expect(afterFailure({ sandbox: true }, noLibrary, undefined)).toBeUndefined();
  });
  test('the sandbox is given up where the system forbids it, and only for that', () => {
    expect(afterFailure({ sandbox: true }, noSandbox, libraries)).toEqual({ sandbox: false });
    expect(afterFailure({ sandbox: false }, noSandbox, libraries)).toBeUndefined();
    expect(
      afterFailure({ sandbox: true }, 'chromium --no-sandbox --disable-setuid-sandbox: crashed', libraries),
    ).toBeUndefined();
  });
});
