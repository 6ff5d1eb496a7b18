/** One file of a tar archive. */
export interface TarFile {
  readonly name: string;
  readonly mode: number;
  readonly bytes: Uint8Array;
}

const block = 512;

/**
 * The regular files of a tar archive (ustar layout: header blocks of 512 octets, contents padded to the next block).
 * Folders, links and anything else are left out.
 * @throws Error when the archive ends in the middle of a file or a header is not one
 * @see POSIX.1-2017, pax, "ustar Interchange Format"
 */
export function untar(archive: Uint8Array): TarFile[] {
  const files: TarFile[] = [];
  for (let at = 0; at + block <= archive.length && archive[at] !== 0; ) {
    const header = archive.subarray(at, at + block);
    const size = octal(header, 124, 12);
    const end = at + block + size;
    if (end > archive.length) throw new Error(`Tar archive ends inside ${text(header, 0, 100)}.`);
    const kind = text(header, 156, 1);
    if (kind === '0' || kind === '') {
      const folder = text(header, 345, 155);
      const name = text(header, 0, 100);
      files.push({
        name: folder === '' ? name : `${folder}/${name}`,
        mode: octal(header, 100, 8),
        bytes: archive.subarray(at + block, end),
      });
    }
    at += block + Math.ceil(size / block) * block;
  }
  return files;
}

function text(header: Uint8Array, start: number, length: number): string {
  return Buffer.from(header.subarray(start, start + length))
    .toString('utf8')
    .split('\0')[0]!;
}

function octal(header: Uint8Array, start: number, length: number): number {
  const digits = text(header, start, length).trim();
  if (!/^[0-7]+$/.test(digits)) throw new Error(`Tar header holds "${digits}" where an octal number belongs.`);
  return Number.parseInt(digits, 8);
}
