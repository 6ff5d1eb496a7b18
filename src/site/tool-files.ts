import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type DigestFile, inputsDigest, sha256 } from '../archive/digest.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const single = ['astro.config.mjs', 'package.json', 'package-lock.json'];
const folders = ['public', 'src'];

let files: readonly DigestFile[] | undefined;

/** Every file of this tool that decides on what it writes. */
function toolFiles(): readonly DigestFile[] {
  files ??= [
    ...folders.flatMap(filesUnder).filter((name) => /\.(?:ts|mjs|astro|css|yaml|mdx|svg|woff2|json)$/.test(name)),
    ...single,
  ].map((name) => ({ name, bytes: readFileSync(join(root, name)) }));
  return files;
}

function filesUnder(folder: string): string[] {
  try {
    return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(root.length).replaceAll('\\', '/'));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
}

let digest: string | undefined;
/** `inputsDigest` of the tool's own files, read once: changed code must not be taken for the code that made something. */
export function codeDigest(): string {
  digest ??= inputsDigest(toolFiles());
  return digest;
}

/** Text of the lock file, which pins every package. */
export const lockText = (): string => readFileSync(join(root, 'package-lock.json'), 'utf8');
export const lockDigest = (): string => sha256(lockText());
