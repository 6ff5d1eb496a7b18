import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

export interface CommandRun {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Runs one of the project's commands as a user would. */
export const runCommand = (
  name: string,
  words: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<CommandRun> => runScript(commandPath(name), words, env);

export const commandPath = (name: string): string => join(root, 'src/commands', `${name}.ts`);

/** Runs a script in a process of its own. */
export function runScript(
  path: string,
  words: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<CommandRun> {
  return new Promise((done) => {
    execFile(
      process.execPath,
      [path, ...words],
      { cwd: root, env: { ...ownEnvironment(), ...env }, maxBuffer: 1 << 26 },
      (error, out, err) => {
        done({ status: typeof error?.code === 'number' ? error.code : error ? -1 : 0, out, err });
      },
    );
  });
}

/** The environment without what the test runner puts there for builds of its own. */
export function ownEnvironment(): NodeJS.ProcessEnv {
  const { NODE_ENV: _mode, MODE: _name, DEV: _dev, PROD: _prod, VITEST: _runner, ...rest } = process.env;
  return rest;
}
