import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { sha256 } from '../../src/archive/digest.ts';
import { starterSpec } from '../../src/commands/starter-spec.ts';
import { type CommandRun, commandPath, ownEnvironment, runCommand } from './run-command.ts';

// Each test runs the whole command once or more.
vi.setConfig({ testTimeout: 240_000 });

// The tests follow one designs folder through its life; each starts from the output that the one before left.
const root = mkdtempSync(join(tmpdir(), 'copperplate-packet-'));
const [designs, out] = [join(root, 'designs'), join(root, 'dist')];
// The unpacked browser is shared; everything else that is kept between runs is this test's own.
const cache = join(root, 'cache');
const browser = fileURLToPath(new URL('../../.cache/browser', import.meta.url));

afterAll(() => rmSync(root, { recursive: true, force: true }));

function write(name: string, change: (spec: string) => string = (spec) => spec): void {
  mkdirSync(join(designs, name), { recursive: true });
  writeFileSync(join(designs, name, 'spec.yaml'), change(starterSpec(name.split('/')[0]!, '2026-04-01')));
}
const words = (...more: string[]) => ['--designs', designs, '--trials', '300', '--out', out, ...more];
const packet = (more: string[] = [], env: Record<string, string> = {}): Promise<CommandRun> =>
  runCommand('packet', words(...more), { COPPERPLATE_CACHE: cache, ...env });

/** Digest of every file of an output. */
function digests(folder: string): Map<string, string> {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return new Map(
    names
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((path) => [path.slice(folder.length + 1), sha256(readFileSync(path))]),
  );
}

beforeAll(() => {
  mkdirSync(cache);
  if (existsSync(browser)) cpSync(browser, join(cache, 'browser'), { recursive: true });
  write('dinghy/rev-a');
  write('kite-winch/rev-a');
});

test('a run makes site, PDF, archive and tables of every revision, and says what it is doing', async () => {
  const { status, out: said, err } = await packet();
  expect(status).toBe(0);
  expect(said).toMatch(/kite-winch\s+rev-a\s+\w+.*DOC-1-A\.pdf \(\d+ pages\)/);
  expect(err).toMatch(/^calculating 1 of 2: dinghy\/rev-a$/m);
  expect(err).toMatch(/^building page \d+ of \d+: \S+\/rev-a$/m);
  expect(err).toMatch(/^printing 1 of 2: dinghy\/rev-a$/m);
  expect(readdirSync(join(out, 'dinghy/rev-a'))).toEqual(
    expect.arrayContaining(['DOC-1-A.pdf', 'DOC-1-A.zip', 'index.html', 'margins.csv', 'results.json']),
  );
  expect(readdirSync(root).sort()).toEqual(['cache', 'designs', 'dist']);
});

test('the archive is whole and is made again alike; a changed byte is named', async () => {
  const zip = join(out, 'dinghy/rev-a/DOC-1-A.zip');
  const verified = await runCommand('verify', [zip], { COPPERPLATE_CACHE: cache, TZ: 'Pacific/Kiritimati' });
  expect(verified.out).toMatch(/is whole: \d+ files/);
  expect(verified.out).toMatch(/all \d+ bytes are the same/);
  expect(verified.status).toBe(0);
  const bytes = readFileSync(zip);
  const spoilt = join(root, 'spoilt.zip');
  // In the first stored file, behind its header: a face, which is packed as it is.
  bytes[bytes.indexOf('wOF2') + 100]! ^= 1;
  writeFileSync(spoilt, bytes);
  const found = await runCommand('verify', [spoilt]);
  expect(found).toMatchObject({
    status: 1,
    out: expect.stringMatching(/\n {2}data\/site\/_astro\/\S+\.woff2 was changed/),
  });
  rmSync(spoilt);
  expect(await runCommand('verify', [join(out, 'index.html')])).toMatchObject({
    status: 2,
    err: expect.stringContaining('is not an archived packet'),
  });
});

test('the same inputs give the same bytes in another folder, time zone and language, with nothing kept', async () => {
  const elsewhere = join(root, 'else where');
  cpSync(designs, join(elsewhere, 'boards'), { recursive: true });
  const again = await runCommand(
    'packet',
    ['--designs', join(elsewhere, 'boards'), '--trials', '300', '--out', join(elsewhere, 'out'), '--fresh', '--quiet'],
    { COPPERPLATE_CACHE: cache, TZ: 'America/St_Johns', LANG: 'de_DE.UTF-8', LC_ALL: 'tr_TR.UTF-8' },
  );
  expect(again).toMatchObject({ status: 0, err: '' });
  expect(digests(join(elsewhere, 'out'))).toEqual(digests(out));
  rmSync(elsewhere, { recursive: true });
});

test('an edit of one spec costs that one; the other packet keeps its bytes', async () => {
  const before = digests(out);
  write('dinghy/rev-a', (spec) => spec.replace('18 kohm', '17 kohm'));
  const { status, err } = await packet();
  expect(status).toBe(0);
  expect(err).toMatch(/^calculating 1 of 1: dinghy\/rev-a$/m);
  expect(err).not.toMatch(/(calculating|building page|printing).*kite-winch/);
  const after = digests(out);
  const changed = [...after.keys()].filter((path) => after.get(path) !== before.get(path));
  expect(changed).toEqual(expect.arrayContaining(['.packets.json', 'dinghy/rev-a/results.json']));
  expect(changed.filter((path) => path.startsWith('kite-winch/'))).toEqual([]);
  expect([...after.keys()]).toEqual([...before.keys()]);
});

test('nothing changed costs nothing', async () => {
  const before = digests(out);
  const idle = await packet();
  expect(idle.err).not.toMatch(/calculating|building|printing/);
  expect(digests(out)).toEqual(before);
});

test('a spec that fails leaves its last packet and touches no other; a release that is changed fails so', async () => {
  write('dinghy/rev-a', (spec) => spec.replace('status: draft', 'status: released'));
  const release = await packet();
  expect(release.err).toMatch(/dinghy\/rev-a is released\. \S+released\.sha256 says with which inputs/);
  const before = digests(out);
  write('dinghy/rev-a', (spec) => spec.replace('18 kohm', '16 kohm'));
  write('kite-winch/rev-a', (spec) => spec.replace('100 kohm', '110 kohm'));
  const { status, err } = await packet();
  expect(status).toBe(2);
  expect(err).toMatch(/changed-after-release[\s\S]*npm run new -- dinghy --from rev-a/);
  const after = digests(out);
  const of = (all: Map<string, string>, board: string) => [...all].filter(([path]) => path.startsWith(`${board}/`));
  expect(of(after, 'dinghy')).toEqual(of(before, 'dinghy'));
  expect(after.get('kite-winch/rev-a/results.json')).not.toBe(before.get('kite-winch/rev-a/results.json'));
  const list = readFileSync(join(out, 'index.html'), 'utf8');
  expect(list).toContain('href="dinghy/rev-a/index.html"');
  expect(list).toContain('changed-after-release');
});

test('killed at any moment, the output is whole, the earlier or the later one', async () => {
  const marks = new Set<string>();
  for (const [i, moment] of [0.9, 2.3].entries()) {
    const before = [...digests(out)].join();
    write('kite-winch/rev-a', (spec) => spec.replace('100 kohm', `${120 + i} kohm`));
    const child = spawn(process.execPath, [commandPath('packet'), ...words()], {
      env: { ...ownEnvironment(), COPPERPLATE_CACHE: cache },
      stdio: 'ignore',
      detached: true,
    });
    const gone = once(child, 'exit');
    await new Promise((resolve) => setTimeout(resolve, moment * 1000));
    try {
      process.kill(-child.pid!, 'SIGKILL');
    } catch {
      // It was done already: the later state must be there.
    }
    await gone;
    const now = [...digests(out)].join();
    marks.add(now === before ? 'earlier' : 'later');
    if (now !== before) expect(readFileSync(join(out, 'kite-winch/rev-a/colophon.html'), 'utf8')).toBeTruthy();
  }
  expect(marks.has('earlier')).toBe(true);
  await packet();
  expect(readdirSync(root).sort()).toEqual(['cache', 'designs', 'dist']);
});

test('without a browser the site is built, and the message says what to do', async () => {
  const { status, err } = await packet(['kite-winch'], { COPPERPLATE_BROWSER: '/nowhere/chrome' });
  expect(status).toBe(3);
  expect(err).toMatch(
    /COPPERPLATE_BROWSER names \/nowhere\/chrome.*Correct or unset it\. The site is built without it/,
  );
  expect(existsSync(join(out, 'kite-winch/rev-a/index.html'))).toBe(true);
  expect(existsSync(join(out, 'kite-winch/rev-a/DOC-1-A.pdf'))).toBe(false);
  expect(existsSync(join(out, 'dinghy/rev-a/DOC-1-A.pdf'))).toBe(true);
});
