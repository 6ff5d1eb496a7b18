import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { places } from '../archive/bag/archive.ts';
import { bagProblems } from '../archive/bag/bag-problems.ts';
import { differences } from '../archive/bag/differences.ts';
import { type MadeOf, otherMakers, readMadeOf } from '../archive/bag/made-of.ts';
import { openBag } from '../archive/bag/open-bag.ts';
import { ZipError } from '../archive/bag/zip.ts';
import { UsageError } from '../site/options.ts';
import { codeDigest, lockDigest } from '../site/tool-files.ts';
import { version } from '../site/version.ts';
import { type ExitStatus, runWords } from './run.ts';

const usage = 'expected `npm run verify -- path/to/OC-210-B.zip`, with --check-only to leave out the rebuilding';

/**
 * Checks an archived packet against its own manifests, then makes it again from the specification inside and compares every byte.
 * 0: whole, and made again alike; 1: something in it is not as it was written; 2: not an archive of a packet; 3: whole, but it
 * could not be made again here.
 */
async function verify(words: readonly string[]): Promise<ExitStatus> {
  const { path, checkOnly } = readWords(words);
  const bytes = await readFile(path).catch((error: NodeJS.ErrnoException) => {
    throw new UsageError(`cannot read ${path} (${error.code}); ${usage}.`);
  });
  const opened = openOr(() => openBag(bytes), path);
  const problems = bagProblems(opened.files);
  if (problems.length) {
    console.log(`${path} is not as it was written:\n${problems.map((problem) => `  ${problem}`).join('\n')}`);
    return 1;
  }
  const made = openOr(() => readMadeOf(opened.files), path);
  const count = [...opened.files.keys()].filter((name) => name.startsWith('data/')).length;
  console.log(`${basename(path)} is whole: ${count} files are as its SHA-256 and SHA-512 manifests say.`);
  if (checkOnly) return 0;
  const others = otherMakers(made, {
    tool: version,
    lock_sha256: lockDigest(),
    code_sha256: codeDigest(),
    node: process.version,
  });
  if (others.length) return notRebuilt(others);
  return rebuild(bytes, opened.name, opened.files, made);
}

function readWords(words: readonly string[]): { path: string; checkOnly: boolean } {
  const paths = words.filter((word) => !word.startsWith('--'));
  const flags = words.filter((word) => word.startsWith('--'));
  const unknown = flags.find((flag) => flag !== '--check-only');
  if (unknown !== undefined || paths.length !== 1)
    throw new UsageError(`found ${unknown ?? (paths.length ? `\`${paths.join(' ')}\`` : 'no file')}; ${usage}.`);
  return { path: paths[0]!, checkOnly: flags.length > 0 };
}

function openOr<T>(open: () => T, path: string): T {
  try {
    return open();
  } catch (error) {
    if (error instanceof ZipError) throw new UsageError(`${path} is not an archived packet. ${error.message}`);
    throw error;
  }
}

function notRebuilt(others: readonly string[]): ExitStatus {
  console.log(
    `It was not made again: that needs the tool that made it.\n${others.map((other) => `  ${other}`).join('\n')}\nCheck out that version, run \`npm ci\` there, and verify it with that.`,
  );
  return 3;
}

/** Makes the archive again in a folder of its own, with nothing from any cache, and compares. */
async function rebuild(
  bytes: Uint8Array,
  name: string,
  files: ReadonlyMap<string, Uint8Array>,
  made: MadeOf,
): Promise<ExitStatus> {
  const folder = await mkdtemp(join(tmpdir(), 'copperplate-verify-'));
  try {
    await writeDesigns(join(folder, 'designs'), files, made);
    const said = await runPacket(folder, made);
    const again = await readFile(join(folder, 'dist', made.board, made.revision, `${name}.zip`)).catch(() => undefined);
    if (!again) {
      console.log(`It could not be made again:\n${said.replaceAll(/^/gm, '  ')}`);
      return 3;
    }
    if (Buffer.compare(again, bytes) === 0) {
      console.log(`Made again from the specification inside: all ${bytes.length} bytes are the same.`);
      return 0;
    }
    const second = openBag(again);
    const others = otherMakers(made, readMadeOf(second.files));
    if (others.length) return notRebuilt(others);
    console.log(
      `Made again from the specification inside, it is not the same:\n${differences(files, second.files)
        .map((difference) => `  ${difference}`)
        .join('\n')}`,
    );
    return 1;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Puts the revision, and the one it replaces, where `packet` looks for them. */
async function writeDesigns(designs: string, files: ReadonlyMap<string, Uint8Array>, made: MadeOf): Promise<void> {
  const own = `data/${places.inputs}/`;
  const earlier = `data/${places.superseded}/`;
  for (const [path, bytes] of files) {
    const target = path.startsWith(own)
      ? join(made.revision, path.slice(own.length))
      : path.startsWith(earlier)
        ? path.slice(earlier.length)
        : undefined;
    if (target === undefined || target.split('/').length !== 2) continue;
    await mkdir(join(designs, made.board, target, '..'), { recursive: true });
    await writeFile(join(designs, made.board, target), bytes);
  }
}

/** @returns what it said when it failed */
function runPacket(folder: string, made: MadeOf): Promise<string> {
  const { SOURCE_DATE_EPOCH: _date, ...env } = process.env;
  const words = ['--designs', join(folder, 'designs'), '--out', join(folder, 'dist')];
  const trials = made.trials === undefined ? [] : ['--trials', `${made.trials}`];
  const how = ['--seed', `${made.seed}`, ...trials, '--paper', made.paper, '--fresh', '--quiet'];
  const child = spawn(
    process.execPath,
    [
      ...process.execArgv,
      fileURLToPath(new URL('./packet.ts', import.meta.url)),
      ...words,
      ...how,
      `${made.board}/${made.revision}`,
    ],
    { env: { ...env, ...(made.source_date_epoch && { SOURCE_DATE_EPOCH: made.source_date_epoch }) } },
  );
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (piece) => (said += String(piece)));
  return new Promise((done, failed) => child.on('close', () => done(said)).on('error', failed));
}

await runWords(verify);
