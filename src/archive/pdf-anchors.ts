import { PDFArray, PDFDict, type PDFDocument, PDFName, PDFRef } from 'pdf-lib';
import type { AnchorPages } from './fill-pages.ts';

/** Page of each named destination, counted from 1. The browser writes their names as in a web address; here they are plain. */
export function anchorPages(doc: PDFDocument): AnchorPages {
  const destinations = doc.catalog.lookup(PDFName.of('Dests'));
  if (!(destinations instanceof PDFDict)) return {};
  const pageOf = new Map(doc.getPages().map((page, index) => [page.ref, index + 1]));
  const found: Record<string, number> = {};
  for (const [name] of destinations.entries()) {
    const destination = destinations.lookup(name);
    const target = destination instanceof PDFArray ? destination.get(0) : undefined;
    const page = target instanceof PDFRef ? pageOf.get(target) : undefined;
    if (page !== undefined) found[plain(name)] = page;
  }
  return found;
}

function plain(name: PDFName): string {
  const text = name.decodeText();
  try {
    return decodeURIComponent(text);
  } catch {
    return text; // a lone % is no web address
  }
}
