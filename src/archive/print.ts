import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ParseSpeeds, PDFDocument } from 'pdf-lib';
import type { Browser, Page } from 'playwright-core';
import { describeMaths } from './describe-maths.ts';
import { type AnchorPages, pageText, unknownPage } from './fill-pages.ts';
import { finishPdf, type PdfFacts } from './finish-pdf.ts';
import { findMisfits } from './misfits.ts';
import { namePageGroups, unnamePageGroups } from './page-groups.ts';
import { anchorPages } from './pdf-anchors.ts';
import { areaWidths, printScale } from './pdf-scale.ts';
import { pageText as instructions } from './pdf-text.ts';
import {
  choosePaper,
  formulaMark,
  keepLinksInside,
  layOutAfresh,
  layYardstick,
  liftYardstick,
  linkEveryAnchor,
  loadFonts,
  ownPageRulesLast,
  pageRequests,
  writePages,
  yardstick,
} from './print-copy.ts';
import { misfitInWords, PrintError, shrunkInWords } from './print-error.ts';
import { textFaults } from './text-faults.ts';

export interface PrintOptions extends PdfFacts {
  readonly paper: 'A4' | 'Letter';
}

export interface PrintedPacket {
  readonly pdf: Uint8Array;
  readonly pages: number;
  /** Page of every element with an id that shows in print, counted from 1. */
  readonly anchors: AnchorPages;
  /** Sentences on what was printed, but should be looked at. */
  readonly warnings: readonly string[];
}

const mostPasses = 5;

/**
 * Prints the print document of one revision. Page numbers in it (`data-page-of="anchor"`, `data-page-range="first last"`) are
 * filled from a first print and printed again until nothing moves. The file itself stays as it is.
 * Same document, options and browser version: same bytes.
 * @param htmlPath  file of the print document in the built site; it is opened from there, without a server
 * @throws PrintError when a file, face or sign is missing, something is wider than the page, or page numbers do not settle
 */
export async function printPacket(browser: Browser, htmlPath: string, options: PrintOptions): Promise<PrintedPacket> {
  const context = await browser.newContext({
    offline: true,
    javaScriptEnabled: false,
    locale: 'en-GB',
    timezoneId: 'UTC',
  });
  try {
    const page = await context.newPage();
    page.setDefaultTimeout(120_000);
    await open(page, htmlPath);
    await prepare(page, options.paper);
    const draft = await draftPrint(page, htmlPath);
    const { doc, anchors } = await settle(page, htmlPath, draft.anchors);
    refuse(htmlPath, await textFaults(doc, page));
    const warnings = [...draft.warnings, ...(await unknownAnchors(page, anchors)), ...emptyPages(doc)];
    return { pdf: await finishPdf(doc, options), pages: doc.getPageCount(), anchors, warnings };
  } finally {
    await context.close();
  }
}

/** Opens the document and sees to it that everything it needs is there, from the disk alone. */
async function open(page: Page, htmlPath: string): Promise<void> {
  const problems: string[] = [];
  page.on('requestfailed', (request) => {
    const local = request.url().startsWith('file:');
    problems.push(
      local ? `It needs ${request.url()}, which is not there.` : `It asks the network for ${request.url()}.`,
    );
  });
  await page.goto(pathToFileURL(htmlPath).href, { waitUntil: 'load' }).catch((error: Error) => {
    throw new PrintError(basename(htmlPath), [`It could not be opened: ${error.message.split('\n')[0]}`]);
  });
  const faces = await page.evaluate(loadFonts);
  refuse(htmlPath, [...problems, ...faces.map((face) => `The face ${face} could not be loaded.`)]);
}

async function prepare(page: Page, paper: PrintOptions['paper']): Promise<void> {
  await page.evaluate(ownPageRulesLast);
  await page.evaluate(choosePaper, paper.toLowerCase());
  await page.evaluate(describeMaths, formulaMark);
  await page.evaluate(keepLinksInside);
}

/** A print for measuring: whether it fits, and on which page each anchor stands before any number is filled in. */
async function draftPrint(page: Page, htmlPath: string): Promise<{ anchors: AnchorPages; warnings: string[] }> {
  const groups = await page.evaluate(namePageGroups);
  await page.evaluate(linkEveryAnchor);
  await page.evaluate(layYardstick, yardstick);
  const doc = await print(page, { tagged: false });
  await page.evaluate(liftYardstick);
  const anchors = anchorPages(doc);
  const offenders = await findMisfits(page, groups, anchors, areaWidths(doc));
  await page.evaluate(unnamePageGroups);
  const scale = printScale(doc);
  if (scale < 0.999) refuse(htmlPath, shrunkInWords(scale, offenders));
  return { anchors, warnings: offenders.map(misfitInWords) };
}

/** Fills the page numbers and prints until they are true. */
async function settle(
  page: Page,
  htmlPath: string,
  draft: AnchorPages,
): Promise<{ doc: PDFDocument; anchors: AnchorPages }> {
  let anchors = draft;
  const requests = await page.evaluate(pageRequests);
  const texts = (): string[] => requests.map((request) => pageText(request, anchors));
  for (let pass = 1; pass <= mostPasses; pass += 1) {
    const written = texts();
    await page.evaluate(writePages, written);
    const doc = await print(page, { tagged: true });
    anchors = anchorPages(doc);
    if (texts().every((text, index) => text === written[index])) return { doc, anchors };
  }
  throw new PrintError(basename(htmlPath), [
    `Its page numbers do not settle in ${mostPasses} prints: filling them in moves what they count. Give them a fixed width.`,
  ]);
}

async function print(page: Page, { tagged }: { tagged: boolean }): Promise<PDFDocument> {
  await page.evaluate(layOutAfresh);
  const bytes = await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged, outline: tagged });
  return PDFDocument.load(bytes, { updateMetadata: false, parseSpeed: ParseSpeeds.Fastest });
}

async function unknownAnchors(page: Page, anchors: AnchorPages): Promise<string[]> {
  const requests = await page.evaluate(pageRequests);
  const unknown = requests.filter((request) => pageText(request, anchors) === unknownPage);
  const names = new Set(unknown.map((request) => ('of' in request ? request.of : request.range)));
  return [...names].map(
    (name) => `A page number is asked for "${name}", which does not stand in print; "${unknownPage}" stands there.`,
  );
}

/** Pages with nothing but their running head and foot: the browser tags what belongs to the text, and only that. */
function emptyPages(doc: PDFDocument): string[] {
  const empty = doc.getPages().flatMap((page, index) => (/\/MCID/.test(instructions(page)) ? [] : [index + 1]));
  return empty.length === 0 ? [] : [`Page ${empty.join(', ')} is empty: something without ink does not fit before it.`];
}

function refuse(htmlPath: string, problems: readonly string[]): void {
  if (problems.length > 0) throw new PrintError(basename(htmlPath), problems);
}
