import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { BrowserError, openBrowser } from '../archive/browser.ts';
import { fillPages } from '../archive/fill-pages.ts';
import { findBrowser } from '../archive/find-browser.ts';
import { filesIn } from '../archive/keep-earlier.ts';
import { madeDate } from '../archive/made-date.ts';
import { printPacket } from '../archive/print.ts';
import { PrintError } from '../archive/print-error.ts';
import type { CalculatedPacket } from '../site/calculated.ts';
import type { Options } from '../site/options.ts';
import { pdfName } from '../site/pdf-name.ts';
import { version } from '../site/version.ts';
import { archiveOne } from './archive-one.ts';
import type { Progress } from './progress.ts';

const cache = fileURLToPath(new URL('../../.cache/browser', import.meta.url));

/** Where each revision's PDF lies in the built site, by `board/revision`, and what the user should know. */
export interface Printed {
  readonly pdfs: ReadonlyMap<string, { readonly path: string; readonly pages: number }>;
  readonly remarks: readonly string[];
}

/** Prints the packet of every revision in a built site, fills the page numbers into its screen pages, and archives it. */
export async function printAll(
  site: string,
  packets: readonly CalculatedPacket[],
  options: Options,
  progress: Progress,
): Promise<Printed> {
  await mkdir(cache, { recursive: true });
  const found = await findBrowser({ platform: process.platform, arch: process.arch, env: process.env, cache });
  if ('missing' in found) return { pdfs: new Map(), remarks: [found.missing] };
  const opened = await openBrowser(found, cache).catch((error: unknown) => {
    if (!(error instanceof BrowserError)) throw error;
    return error.message;
  });
  if (typeof opened === 'string') return { pdfs: new Map(), remarks: [opened] };
  const { browser, remarks } = opened;
  const pdfs = new Map<string, { path: string; pages: number }>();
  const said = [...remarks];
  try {
    for (const [i, one] of packets.entries()) {
      const name = `${one.board}/${one.revision}`;
      progress.stage('printing', i + 1, packets.length, name);
      const printed = await printPacket(browser, join(site, name, 'packet.html'), {
        paper: options.paper,
        ...factsOf(one),
      }).catch((error: unknown) => {
        if (!(error instanceof PrintError)) throw error;
        said.push(`${name}: ${error.message}`);
      });
      if (!printed) continue;
      const { pdf, pages, anchors, warnings } = printed;
      const path = join(name, pdfName(one.packet));
      await writeFile(join(site, path), pdf);
      await fillScreen(join(site, name), anchors);
      await archiveOne(site, one, options, opened.version);
      pdfs.set(name, { path, pages });
      said.push(...warnings.map((warning) => `${name}: ${warning}`));
    }
  } finally {
    await browser.close();
  }
  return { pdfs, remarks: said };
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
