import type { DigestFile } from '../digest.ts';
import { type BagInfo, bagOf, text } from './bag.ts';
import type { MadeOf } from './made-of.ts';
import { type ArchiveNames, readme } from './readme.ts';
import { sbomOf } from './sbom.ts';
import { type PackedFile, packZip } from './zip.ts';

/** Everything that goes into the archive of one revision. */
export interface ArchiveContents extends ArchiveNames {
  readonly owner: string | undefined;
  readonly made: MadeOf;
  /** What `inputs_sha256` is over. */
  readonly inputs: readonly DigestFile[];
  /** Files of the revision that it replaces, for what changed; by name. */
  readonly superseded: { readonly revision: string; readonly files: ReadonlyMap<string, string> } | undefined;
  /** The pages and what lies beside them, by path in the archived site. */
  readonly site: ReadonlyMap<string, Uint8Array | string>;
  /** Text of package-lock.json. */
  readonly lock: string;
}

/** Folders of the payload. */
export const places = { inputs: 'inputs', superseded: 'superseded', site: 'site', tool: 'tool' } as const;

/**
 * The archive of one revision: a bag after RFC 8493 in one folder of a zip. The same contents give the same bytes.
 * @example archiveOf(contents) // unzips to OC-210-B/manifest-sha256.txt, OC-210-B/data/site/index.html …
 */
export function archiveOf(contents: ArchiveContents): Uint8Array {
  const { made, inputs, superseded, site, lock } = contents;
  const payload: PackedFile[] = [
    ...inputs.map(({ name, bytes }) => packed(`${places.inputs}/${name}`, bytes)),
    ...[...(superseded?.files ?? [])].map(([name, bytes]) =>
      packed(`${places.superseded}/${superseded!.revision}/${name}`, bytes),
    ),
    ...[...site].map(([name, bytes]) => packed(`${places.site}/${name}`, bytes)),
    text(`${places.tool}/tool.json`, `${JSON.stringify(made, null, 1)}\n`),
    text(`${places.tool}/sbom.cdx.json`, sbomOf(lock)),
  ];
  const files = bagOf(payload, [text('README.txt', readme(contents))], infoOf(contents));
  return packZip(
    files.map(({ name, bytes }) => ({ name: `${contents.name}/${name}`, bytes })),
    made.dated,
  );
}

const packed = (name: string, bytes: Uint8Array | string): PackedFile =>
  typeof bytes === 'string' ? text(name, bytes) : { name, bytes };

function infoOf({ owner, document, mark, title, made }: ArchiveContents): BagInfo {
  return [
    ...(owner === undefined ? [] : [['Source-Organization', owner] as const]),
    ['External-Description', `Design review packet of ${title}, ${document} revision ${mark}`],
    ['External-Identifier', `${document} revision ${mark}`],
    ['Internal-Sender-Identifier', `${made.board}/${made.revision}`],
    ['Bagging-Date', made.dated],
    ['Bag-Software-Agent', `Copperplate ${made.tool}`],
    ['Inputs-SHA256', made.inputs_sha256],
  ];
}
