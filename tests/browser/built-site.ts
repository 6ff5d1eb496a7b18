import { execFile } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

export interface CommandRun {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Runs one of the project's commands as a user would. */
export function runCommand(name: string, words: readonly string[]): Promise<CommandRun> {
  return new Promise((done) => {
    execFile(
      process.execPath,
      [join(root, 'src/commands', `${name}.ts`), ...words],
      { cwd: root, maxBuffer: 1 << 26 },
      (error, out, err) => {
        done({ status: typeof error?.code === 'number' ? error.code : error ? -1 : 0, out, err });
      },
    );
  });
}

/** The demo board's site and packets in a folder of their own, with few simulated boards. */
export async function buildSite(): Promise<{ folder: string; run: CommandRun; remove(): Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'copperplate-site-'));
  const run = await runCommand('packet', ['--out', folder, '--trials', '1000']);
  return { folder, run, remove: () => rm(folder, { recursive: true, force: true }) };
}
