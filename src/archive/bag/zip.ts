import { unzipSync, type Zippable, zipSync } from 'fflate';

/** A file in an archive. */
export interface PackedFile {
  /** Path with forward slashes. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** An archive that cannot be read, or must not be unpacked. */
export class ZipError extends Error {
  override readonly name = 'ZipError';
}

/** Packed again they would only grow. */
const packedAlready = /\.(?:pdf|woff2|png|jpg|zip)$/;
const plainFile = 0o100644 << 16;
const unix = 3;
/** More than any packet needs; a small file that unpacks to more was made to fill memory. */
const most = 2 ** 30;

/**
 * A zip of the files with the same bytes for the same files and day, whatever machine packs it: sorted by the octets of the
 * names, noon of `day` as the time of each, mode 0644. The library compresses by itself: the zlib that a runtime brings gives
 * other bytes on other processors.
 * @param day  `2026-03-18`
 */
export function packZip(files: readonly PackedFile[], day: string): Uint8Array {
  const mtime = localNoon(day);
  const sorted = files.toSorted((a, b) => Buffer.compare(Buffer.from(a.name), Buffer.from(b.name)));
  const entries: Zippable = Object.fromEntries(
    sorted.map(({ name, bytes }) => [name, [bytes, { level: packedAlready.test(name) ? 0 : 6 }]]),
  );
  return zipSync(entries, { mtime, os: unix, attrs: plainFile });
}

/**
 * The library writes what a clock on the wall shows. Noon is there in every zone, on days when summer time begins too.
 * A zip knows no day before 1980.
 */
function localNoon(day: string): Date {
  const [year, month, date] = (day < '1980' ? '1980-01-01' : day).split('-').map(Number);
  return new Date(year!, month! - 1, date!, 12);
}

/**
 * The files of a zip by name; folders are left out. Checks no digest: see `bagProblems`.
 * @throws ZipError when it is no zip, a name could lead out of the folder it is unpacked to, or stands twice
 */
export function unpackZip(bytes: Uint8Array): Map<string, Uint8Array> {
  const names = new Set<string>();
  let size = 0;
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        refuseName(name, names);
        names.add(name);
        size += originalSize;
        if (size > most)
          throw new ZipError('It unpacks to more than a gigabyte, which no packet does; it was not read.');
        return !name.endsWith('/');
      },
    });
    return new Map(Object.entries(files));
  } catch (error) {
    if (error instanceof ZipError) throw error;
    throw new ZipError(`It is not a whole zip file (${error instanceof Error ? error.message : String(error)}).`);
  }
}

function refuseName(name: string, before: ReadonlySet<string>): void {
  const shown = JSON.stringify(name);
  if (before.has(name)) throw new ZipError(`The file ${shown} stands in it twice.`);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  const odd = name === '' || /^\/|^[A-Za-z]:|\\|[\u0000-\u001f\u007f]/.test(name);
  if (odd || name.split('/').some((step) => step === '..' || step === '.' || step === '__proto__'))
    throw new ZipError(`The name ${shown} in it could lead out of the folder it is unpacked to; nothing was unpacked.`);
}
