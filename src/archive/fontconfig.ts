import { createHash } from 'node:crypto';
import { mkdir, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { exists } from './unpack-once.ts';

/**
 * Writes a Fontconfig file that lists one folder and nothing else, so that no font of the machine gets into a PDF.
 * @returns its path, for the environment variable FONTCONFIG_FILE
 */
export async function writeFontconfig(cache: string, fontFolder: string): Promise<string> {
  const text = fontconfig(fontFolder, join(cache, 'fontconfig'));
  const name = `fonts-${createHash('sha256').update(text).digest('hex').slice(0, 12)}.conf`;
  const path = join(cache, name);
  if (!(await exists(path))) {
    await mkdir(cache, { recursive: true });
    const temporary = `${path}.${process.pid}`;
    await writeFile(temporary, text);
    await rename(temporary, path);
  }
  return path;
}

function fontconfig(fontFolder: string, cacheFolder: string): string {
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${escapeXml(fontFolder)}</dir>
  <cachedir>${escapeXml(cacheFolder)}</cachedir>
</fontconfig>
`;
}

const escapeXml = (path: string): string =>
  path.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
