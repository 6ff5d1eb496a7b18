import { inflateSync } from 'node:zlib';
import {
  decodePDFRawStream,
  PDFArray,
  type PDFDict,
  type PDFDocument,
  PDFName,
  type PDFPage,
  PDFRawStream,
} from 'pdf-lib';

/** Contents of a stream, unpacked, with one character an octet. */
export function streamText(stream: PDFRawStream): string {
  const filter = stream.dict.get(PDFName.of('Filter'));
  const bytes =
    filter === PDFName.of('FlateDecode') && !stream.dict.has(PDFName.of('DecodeParms'))
      ? inflateSync(stream.contents) // far quicker than the general way below
      : decodePDFRawStream(stream).decode();
  return Buffer.from(bytes).toString('latin1');
}

/** Drawing instructions of a page. */
export function pageText(page: PDFPage): string {
  const contents = page.node.Contents();
  const streams =
    contents instanceof PDFArray ? contents.asArray().map((part) => page.doc.context.lookup(part)) : [contents];
  return streams.map((stream) => (stream instanceof PDFRawStream ? streamText(stream) : '')).join('\n');
}

/** The dictionaries among the objects of a document that carry `/Type /<type>`. */
export function dictsOfType(doc: PDFDocument, type: string): PDFDict[] {
  return doc.context
    .enumerateIndirectObjects()
    .map(([, object]) => object)
    .filter(
      (object): object is PDFDict =>
        'get' in object && (object as PDFDict).get(PDFName.of('Type')) === PDFName.of(type),
    );
}
