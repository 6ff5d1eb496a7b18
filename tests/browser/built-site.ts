import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type CommandRun, runCommand } from '../commands/run-command.ts';

/** The site with both packets of one demo board, in a folder of their own, with few simulated boards. */
export async function buildSite(): Promise<{ folder: string; run: CommandRun; remove(): Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'copperplate-site-'));
  const run = await runCommand('packet', ['orchard-cart', '--out', folder, '--trials', '1000']);
  return { folder, run, remove: () => rm(folder, { recursive: true, force: true }) };
}
