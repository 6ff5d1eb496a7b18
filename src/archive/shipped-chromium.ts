import { createReadStream, createWriteStream } from 'node:fs';
import { mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { fileURLToPath } from 'node:url';
import { brotliDecompressSync, createBrotliDecompress } from 'node:zlib';
import { exists, unpackOnce } from './unpack-once.ts';
import { untar } from './untar.ts';

/** Where the npm package @sparticuz/chromium keeps its compressed files. Its own unpacking is not used: it trusts
 * whatever already lies in the common temporary folder. */
const packageRoot = new URL('../', import.meta.resolve('@sparticuz/chromium'));

/** The Chromium that the install brings runs on this system only. */
export const shippedRunsOn = (platform: string, arch: string): boolean => platform === 'linux' && arch === 'x64';

/**
 * Unpacks the shipped Chromium (about 210 MB, 1 to 3 s) on first use, and again when the unpacked file has lost its size.
 * @returns the program, and the folder of shared libraries that a bare system may miss
 */
export async function unpackChromium(cache: string): Promise<{ program: string; libraries: string }> {
  const folder = join(cache, `chromium-${await version()}`);
  const [program, libraries, size] = [join(folder, 'chromium'), join(folder, 'lib'), join(folder, 'chromium.size')];
  if ((await exists(folder)) && (await sizeOf(program)) !== (await readFile(size, 'utf8').catch(() => ''))) {
    await rm(folder, { recursive: true });
  }
  await unpackOnce(folder, async (into) => {
    await pipeline(
      createReadStream(packed('chromium.br')),
      createBrotliDecompress({ chunkSize: 2 ** 20 }),
      createWriteStream(join(into, basename(program)), { mode: 0o755, flush: true }),
    );
    await unpackTar('al2023.tar.br', /^lib\//, join(into, basename(libraries)));
    await writeFile(join(into, basename(size)), await sizeOf(join(into, basename(program))));
  });
  return { program, libraries };
}

const sizeOf = async (path: string): Promise<string> =>
  stat(path).then(
    ({ size }) => String(size),
    () => 'missing',
  );

/**
 * The one system font that the printing browser gets to see on Linux. It has to have one, or it refuses web fonts
 * too; and it should be one that no page uses, so that a text which falls back to it is noticed.
 */
export async function unpackFallbackFont(cache: string): Promise<string> {
  return unpackOnce(join(cache, `fallback-font-${await version()}`), (into) =>
    unpackTar('fonts.tar.br', /OpenSans-Regular\.ttf$/, into),
  );
}

async function version(): Promise<string> {
  const { version } = JSON.parse(await readFile(new URL('package.json', packageRoot), 'utf8')) as { version: string };
  return version;
}

const packed = (name: string): string => fileURLToPath(new URL(`bin/${name}`, packageRoot));

async function unpackTar(name: string, wanted: RegExp, into: string): Promise<void> {
  await mkdir(into, { recursive: true });
  for (const file of untar(brotliDecompressSync(await readFile(packed(name))))) {
    if (wanted.test(file.name)) {
      await writeFile(join(into, basename(file.name)), file.bytes, { mode: file.mode, flush: true });
    }
  }
}
