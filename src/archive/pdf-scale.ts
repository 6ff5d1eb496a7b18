import { PDFArray, PDFDict, type PDFDocument, PDFName, PDFNumber, PDFString } from 'pdf-lib';
import { pageText } from './pdf-text.ts';
import { yardstick } from './print-copy.ts';

/**
 * By how much the browser shrank the pages to get something wide onto them: 1 where it did not, 0.8 where everything stands
 * at four fifths of its size. Read off the yardstick's rectangle.
 * @throws Error when the yardstick is not in the document
 */
export function printScale(doc: PDFDocument): number {
  for (const page of doc.getPages()) {
    for (const item of page.node.Annots()?.asArray() ?? []) {
      const link = doc.context.lookup(item);
      if (!(link instanceof PDFDict)) continue;
      const action = link.lookup(PDFName.of('A'));
      const address = action instanceof PDFDict ? action.lookup(PDFName.of('URI')) : undefined;
      if (address instanceof PDFString && address.asString() === yardstick.address) {
        const [left, , right] = link.lookup(PDFName.of('Rect'), PDFArray).asArray();
        if (left instanceof PDFNumber && right instanceof PDFNumber) {
          return (right.asNumber() - left.asNumber()) / yardstick.points;
        }
      }
    }
  }
  throw new Error('The yardstick of the print copy is not in the PDF.');
}

/**
 * Width of the area inside the margins of each page, in CSS pixels: that of the clip with which the browser begins the
 * body of a page. Nothing for a page on which no such clip is found; other browsers may draw otherwise.
 */
export function areaWidths(doc: PDFDocument): (number | undefined)[] {
  return doc.getPages().map((page) => {
    const text = pageText(page);
    const scale = /^\s*([\d.]+) 0 0 -[\d.]+ /.exec(text)?.[1];
    const width = /^[\d.-]+ [\d.-]+ ([\d.]+) [\d.]+ re\nW\* n$/m.exec(text)?.[1];
    return scale === undefined || width === undefined ? undefined : (Number(scale) * Number(width) * 96) / 72;
  });
}
