import { createHash } from 'node:crypto';

/** A file that goes into a digest. */
export interface DigestFile {
  /** Path with forward slashes, as it stands in the listing: `spec.yaml`, `methods/voltage-divider.yaml`. */
  readonly name: string;
  readonly bytes: Uint8Array | string;
}

/** SHA-256 in lower-case hexadecimal; text counts as UTF-8. */
export const sha256 = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex');

/**
 * One digest for a set of files: the SHA-256 of a listing with a line `<sha256 of the file>  <name>` and a line feed
 * for each, sorted by the octets of the name. That is what coreutils print, so it can be redone without this project,
 * in a folder that holds the files and nothing else:
 *
 *     find . -type f -printf '%P\n' | LC_ALL=C sort | xargs -d '\n' sha256sum | sha256sum
 *
 * @throws RangeError for a name that stands twice, or holds a line break or backslash (sha256sum would escape it)
 * @example inputsDigest([{ name: 'spec.yaml', bytes: '' }]) // sha256 of "e3b0c442…b855  spec.yaml\n"
 */
export const inputsDigest = (files: readonly DigestFile[]): string => sha256(digestListing(files));

/** The listing that `inputsDigest` digests; as a file, `sha256sum -c` checks the inputs against it. */
export function digestListing(files: readonly DigestFile[]): string {
  const sorted = files
    .map(({ name, bytes }) => ({ name, key: Buffer.from(name), bytes }))
    .sort((a, b) => Buffer.compare(a.key, b.key));
  for (const [index, { name }] of sorted.entries()) {
    if (/[\n\r\\]/.test(name)) throw new RangeError(`The file name ${JSON.stringify(name)} cannot stand in a digest.`);
    if (name === sorted[index - 1]?.name) throw new RangeError(`The file ${name} stands twice among the inputs.`);
  }
  return sorted.map(({ name, bytes }) => `${sha256(bytes)}  ${name}\n`).join('');
}
