import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fillPages } from '../archive/fill-pages.ts';
import { filesIn } from '../archive/keep-earlier.ts';
import { madeDate } from '../archive/made-date.ts';
import { printPacket } from '../archive/print.ts';
import { PrintError } from '../archive/print-error.ts';
import type { CalculatedPacket } from '../site/calculated.ts';
import type { Options } from '../site/options.ts';
import { pdfName } from '../site/pdf-name.ts';
import { version } from '../site/version.ts';
import { archiveOne } from './archive-one.ts';
import { type Finished, headOf, nameOf } from './finished.ts';
import type { Printer } from './printer.ts';

/**
 * Prints one revision in a built site, fills the page numbers into its screen pages, and archives it.
 * @returns its pages are missing where it could not be printed; the remarks say why
 */
export async function finishOne(
  site: string,
  one: CalculatedPacket,
  options: Options,
  printer: Printer,
): Promise<Finished> {
  const { board, revision, packet } = one;
  const finished = { board, revision, head: headOf(packet), remarks: [] };
  const opened = await printer.open();
  if ('missing' in opened) return { ...finished, remarks: [opened.missing] };
  const folder = join(site, board, revision);
  try {
    const { pdf, pages, anchors, warnings } = await printPacket(opened.browser, join(folder, 'packet.html'), {
      paper: options.paper,
      ...factsOf(one),
    });
    await writeFile(join(folder, pdfName(packet)), pdf);
    await fillScreen(folder, anchors);
    await archiveOne(site, one, options, opened.version);
    return { ...finished, pages, remarks: warnings.map((warning) => `${nameOf(one)}: ${warning}`) };
  } catch (error) {
    if (error instanceof PrintError) return { ...finished, remarks: [`${nameOf(one)}: ${error.message}`] };
    throw error;
  }
}

const factsOf = ({ packet }: CalculatedPacket) => ({
  title: `${packet.document} revision ${packet.revisionMark}: ${packet.title}`,
  author: packet.owner ?? '',
  subject: packet.purpose,
  keywords: ['design review', packet.document, packet.status],
  language: packet.language,
  issued: madeDate(packet.issued, process.env.SOURCE_DATE_EPOCH),
  digest: packet.digest,
  creator: `Copperplate ${version}`,
});

async function fillScreen(folder: string, anchors: Readonly<Record<string, number>>): Promise<void> {
  for (const name of await filesIn(folder)) {
    if (!name.endsWith('.html')) continue;
    const path = join(folder, name);
    const html = await readFile(path, 'utf8');
    const filled = fillPages(html, anchors);
    if (filled !== html) await writeFile(path, filled);
  }
}
