import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { archiveOf } from '../archive/bag/archive.ts';
import { frontOf } from '../archive/bag/front.ts';
import { madeDate } from '../archive/made-date.ts';
import { archivedSite } from '../site/archived-site.ts';
import type { CalculatedPacket } from '../site/calculated.ts';
import type { Options } from '../site/options.ts';
import { archiveName, packetName, pdfName } from '../site/pdf-name.ts';
import { codeDigest, lockDigest, lockText } from '../site/tool-files.ts';
import { version } from '../site/version.ts';

/**
 * Writes the archive of a printed revision beside its PDF.
 * @param site  the built site, with relative links and page numbers filled in
 * @param browser  version of the browser that printed it
 */
export async function archiveOne(
  site: string,
  { board, revision, packet, files, origin }: CalculatedPacket,
  options: Options,
  browser: string,
): Promise<void> {
  const names = {
    name: packetName(packet),
    document: packet.document,
    mark: packet.revisionMark,
    title: packet.title,
    status: packet.status,
    issued: packet.issued,
  };
  const front = frontOf({
    ...names,
    revision: `${board}/${revision}`,
    pdf: pdfName(packet),
    files: Object.keys(files).sort(),
  });
  const epoch = process.env.SOURCE_DATE_EPOCH;
  const bytes = archiveOf({
    ...names,
    owner: packet.owner,
    inputs: origin.inputs,
    superseded: origin.superseded,
    site: await archivedSite(site, `${board}/${revision}`, front),
    lock: lockText(),
    made: {
      format: 'copperplate-archive/1',
      tool: version,
      lock_sha256: lockDigest(),
      code_sha256: codeDigest(),
      node: process.version,
      browser,
      board,
      revision,
      inputs_sha256: packet.digest,
      seed: options.seed,
      ...(options.trials !== undefined ? { trials: options.trials } : {}),
      paper: options.paper,
      dated: madeDate(packet.issued, epoch),
      ...(epoch ? { source_date_epoch: epoch } : {}),
    },
  });
  await writeFile(join(site, board, revision, archiveName(packet)), bytes);
}
