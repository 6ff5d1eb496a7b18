import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Findings } from '../analysis/findings.ts';
import { cacheFolder } from './cache-folder.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = cacheFolder('findings');
/** Floors whose code decides on the numbers. */
const engine = ['src/quantity', 'src/expression', 'src/spec', 'src/analysis', 'src/safety'];

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

let code: string | undefined;
/** Digest of the engine's own code: a changed equation must not find yesterday's numbers. */
export function engineDigest(): string {
  code ??= sha256(
    engine
      .flatMap((part) =>
        readdirSync(join(root, part), { recursive: true, encoding: 'utf8' })
          .filter((name) => /\.(ts|yaml)$/.test(name))
          .sort()
          .map((name) => `${part}/${name} ${sha256(readFileSync(join(root, part, name), 'utf8'))}`),
      )
      .concat(process.version)
      .join('\n'),
  );
  return code;
}

export const cacheKey = (parts: readonly (string | number)[]): string => sha256([engineDigest(), ...parts].join('\n'));

/** What was kept under a key, or undefined; an entry whose own digest does not fit is as good as none. */
export function kept(key: string): Findings | undefined {
  try {
    const [digest, text] = splitOnce(readFileSync(join(folder, `${key}.json`), 'utf8'));
    return sha256(text) === digest ? (JSON.parse(text) as Findings) : undefined;
  } catch {
    // Nothing kept, or not readable: it is calculated again.
    return undefined;
  }
}

/** Keeps findings for the next run; a cache that cannot be written costs time and nothing else. */
export function keep(key: string, findings: Findings): void {
  const text = JSON.stringify(findings);
  try {
    mkdirSync(folder, { recursive: true });
    const part = join(folder, `${key}.${process.pid}.part`);
    writeFileSync(part, `${sha256(text)}\n${text}`);
    renameSync(part, join(folder, `${key}.json`));
  } catch {
    return;
  }
}

function splitOnce(text: string): [string, string] {
  const at = text.indexOf('\n');
  return [text.slice(0, at), text.slice(at + 1)];
}
