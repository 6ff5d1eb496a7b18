import { createHash } from 'node:crypto';
import type { PackedFile } from './zip.ts';

/** Digests that every bag carries; coreutils check both. */
export const algorithms = ['sha256', 'sha512'] as const;
export type Algorithm = (typeof algorithms)[number];

/** Labels and values of bag-info.txt, in order. @see RFC 8493, 2.2.2 */
export type BagInfo = readonly (readonly [label: string, value: string])[];

export const declaration = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n';

export const digestOf = (algorithm: Algorithm, bytes: Uint8Array): string =>
  createHash(algorithm).update(bytes).digest('hex');

/**
 * The files of a bag after RFC 8493: the payload below `data/`, its manifests, the bag's own description, and manifests of these.
 * @param payload  names without `data/`
 * @param tags  further files beside `data/`, such as a README
 * @throws RangeError for a name that `sha256sum -c` would not read as it stands
 */
export function bagOf(payload: readonly PackedFile[], tags: readonly PackedFile[], info: BagInfo): PackedFile[] {
  const data = payload.map(({ name, bytes }) => ({ name: `data/${name}`, bytes }));
  const described: PackedFile[] = [
    text('bagit.txt', declaration),
    text('bag-info.txt', infoText([...info, ['Payload-Oxum', oxum(data)]])),
    ...algorithms.map((algorithm) => text(`manifest-${algorithm}.txt`, manifest(algorithm, data))),
    ...tags,
  ];
  const tagManifests = algorithms.map((algorithm) =>
    text(`tagmanifest-${algorithm}.txt`, manifest(algorithm, described)),
  );
  return [...data, ...described, ...tagManifests];
}

/** Octets and files of the payload: `4294967.12`. */
export const oxum = (data: readonly Pick<PackedFile, 'bytes'>[]): string =>
  `${data.reduce((sum, { bytes }) => sum + bytes.length, 0)}.${data.length}`;

export const text = (name: string, content: string): PackedFile => ({ name, bytes: Buffer.from(content) });

function manifest(algorithm: Algorithm, files: readonly PackedFile[]): string {
  const lines = files.map(({ name, bytes }) => {
    if (/[\n\r\\%]/.test(name))
      throw new RangeError(`The file name ${JSON.stringify(name)} cannot stand in a manifest.`);
    return { key: Buffer.from(name), line: `${digestOf(algorithm, bytes)}  ${name}\n` };
  });
  return lines
    .sort((a, b) => Buffer.compare(a.key, b.key))
    .map(({ line }) => line)
    .join('');
}

function infoText(info: BagInfo): string {
  return info.map(([label, value]) => `${label}: ${value.replaceAll(/\s+/g, ' ').trim()}\n`).join('');
}
