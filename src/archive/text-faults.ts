import type { PDFDocument } from 'pdf-lib';
import type { Page } from 'playwright-core';
import { elementsInOtherFaces, elementsWithSigns, signsInDocument } from './find-text.ts';
import { foreignFonts, pagesWithMissingSigns, signsInPdf } from './pdf-fonts.ts';
import { placeInWords, placesOf } from './places.ts';

/** A sentence for each face in the PDF that is not ours, and for signs that no face had. Empty when all is well. */
export async function textFaults(doc: PDFDocument, page: Page): Promise<string[]> {
  const faults: string[] = [];
  for (const { font, signs } of foreignFonts(doc)) {
    const where = await whereForeign(page, signs);
    faults.push(`The face ${font} got in, for ${listSigns(signs)}, which the face asked for lacks. ${where}`);
  }
  const pages = pagesWithMissingSigns(doc);
  if (pages.length > 0) {
    const drawn = signsInPdf(doc);
    const missing = (await page.evaluate(signsInDocument)).filter((sign) => !drawn.has(sign));
    const where = await inWords(page, missing);
    faults.push(`No face has ${listSigns(missing.join(''))}, on page ${pages.join(', ')}. ${where}`);
  }
  return faults;
}

/** A style that names a face which is not shipped puts whole texts into another; else it is single signs. */
async function whereForeign(page: Page, signs: string): Promise<string> {
  const elements = await page.evaluateHandle(elementsInOtherFaces);
  const places = await placesOf(elements);
  if (places.length > 0)
    return `Set in a face that the document does not declare: ${places.map(placeInWords).join('; ')}.`;
  return inWords(
    page,
    [...signs].filter((sign) => sign > '\u007f'),
  );
}

async function inWords(page: Page, signs: string[]): Promise<string> {
  const places = await placesOf(await page.evaluateHandle(elementsWithSigns, signs.slice(0, 5)));
  return places.length === 0
    ? 'It is not in the text itself, so a style sheet puts it there.'
    : `In ${places.map(placeInWords).join('; ')}.`;
}

/** Rare signs first. @example listSigns('a✓') // '"✓" (U+2713), "a" (U+0061)' */
export function listSigns(signs: string): string {
  const shown = [...new Set(signs)].sort((a, b) => b.codePointAt(0)! - a.codePointAt(0)!).slice(0, 5);
  if (shown.length === 0) return 'signs that the PDF does not name';
  return shown
    .map((sign) => `"${sign}" (U+${sign.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')})`)
    .join(', ');
}
