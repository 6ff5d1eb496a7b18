import { type PDFDocument, PDFHexString } from 'pdf-lib';
import { mapNewerTags, renumberTagIds, tabInReadingOrder, tagFormulas } from './pdf-tags.ts';
import { writeXmp, xmpOf } from './xmp.ts';

/** What a PDF says about itself. */
export interface PdfFacts {
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  readonly keywords: readonly string[];
  /** Language of the text, such as `en-GB`. */
  readonly language: string;
  /** The spec's date of issue, `2026-03-18`, or with a time; it is the PDF's only date. */
  readonly issued: string;
  /** SHA-256 of the inputs in hexadecimal; becomes the file identifier. */
  readonly digest: string;
  /** `Copperplate 1.0.0` */
  readonly creator: string;
}

/**
 * Writes the metadata, replaces all that the browser takes from clock and counters by what follows from the inputs, and packs
 * the document. The same document and facts give the same bytes.
 * @throws RangeError for an issue date or digest that is none
 */
export async function finishPdf(doc: PDFDocument, facts: PdfFacts): Promise<Uint8Array> {
  const date = issueDate(facts.issued);
  if (!/^[0-9a-f]{64}$/.test(facts.digest))
    throw new RangeError(`"${facts.digest}" is not a SHA-256 in lower-case hexadecimal.`);
  doc.setTitle(facts.title, { showInWindowTitleBar: true });
  doc.setAuthor(facts.author);
  doc.setSubject(facts.subject);
  doc.setKeywords([...facts.keywords]);
  doc.setCreator(facts.creator);
  doc.setLanguage(facts.language);
  doc.setCreationDate(date);
  doc.setModificationDate(date);
  tagFormulas(doc);
  mapNewerTags(doc);
  renumberTagIds(doc);
  writeXmp(doc, xmpOf(facts));
  tabInReadingOrder(doc);
  const id = (from: number): PDFHexString => PDFHexString.of(facts.digest.slice(from, from + 32).toUpperCase());
  doc.context.trailerInfo.ID = doc.context.obj([id(0), id(32)]);
  return doc.save({ useObjectStreams: true, updateFieldAppearances: false, objectsPerTick: Number.POSITIVE_INFINITY });
}

/** Midnight in Greenwich of a date without a time. */
function issueDate(issued: string): Date {
  const date = new Date(issued);
  if (!/^\d{4}-\d\d-\d\d/.test(issued) || Number.isNaN(date.getTime()))
    throw new RangeError(`"${issued}" is not an ISO date.`);
  return date;
}
