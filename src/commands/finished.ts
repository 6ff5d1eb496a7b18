import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Packet } from '../packet/packet.ts';
import type { StoredRevision } from '../site/calculated.ts';
import { codeDigest } from '../site/tool-files.ts';

/** A packet whose files are finished: what the list of boards and the last table need of it. */
export interface Finished {
  readonly board: string;
  readonly revision: string;
  /** The packet without its chapters. */
  readonly head: Packet;
  /** Pages of its PDF; undefined where it could not be printed. */
  readonly pages?: number;
  /** What should be looked at in print. */
  readonly remarks: readonly string[];
}

export const nameOf = ({ board, revision }: { readonly board: string; readonly revision: string }): string =>
  `${board}/${revision}`;

export const headOf = (packet: Packet): Packet => ({ ...packet, chapters: [] });

/** As the list of boards shows it. */
export const listed = ({ board, revision, head }: Finished): StoredRevision => ({
  board,
  revision,
  packet: head,
  files: {},
});

/** The same for a packet of the earlier output; with a failure where its spec cannot be built now. */
export const listedAsKept = (finished: Finished, failure: string | undefined): StoredRevision => ({
  ...listed(finished),
  kept: true,
  ...(failure === undefined ? {} : { failure }),
});

/** Stands in the output, so that a later run can list a packet that it leaves as it is. */
const record = '.packets.json';

export async function writeRecord(site: string, finished: readonly Finished[]): Promise<void> {
  const packets = finished.toSorted((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1));
  await writeFile(join(site, record), `${JSON.stringify({ code: codeDigest(), packets })}\n`);
}

/** What the record of an earlier output says; empty where there is none of this very tool: another's may be of another form. */
export async function readRecord(out: string): Promise<readonly Finished[]> {
  try {
    const { code, packets } = JSON.parse(await readFile(join(out, record), 'utf8')) as Record<string, unknown>;
    return code === codeDigest() && Array.isArray(packets) ? (packets as Finished[]) : [];
  } catch {
    return [];
  }
}
