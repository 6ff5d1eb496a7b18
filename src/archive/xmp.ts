import { type PDFDocument, PDFName } from 'pdf-lib';
import { escapeXml } from '../figures/escape.ts';
import type { PdfFacts } from './finish-pdf.ts';

/**
 * The metadata of a PDF in the form that catalogues and archives read. The same facts give the same text. It claims no standard
 * for archiving or accessibility: nothing here has been checked by a validator of one.
 * @see ISO 16684-1 (XMP); ISO 32000-1, 14.3.2
 */
export function xmpOf({ title, author, subject, keywords, language, issued, digest, creator }: PdfFacts): string {
  const x = escapeXml;
  const date = `${issued.slice(0, 10)}T00:00:00Z`;
  const inLanguage = (text: string) => `<rdf:Alt><rdf:li xml:lang="x-default">${x(text)}</rdf:li></rdf:Alt>`;
  const bag = keywords.map((keyword) => `<rdf:li>${x(keyword)}</rdf:li>`).join('');
  const lines = [
    '<dc:format>application/pdf</dc:format>',
    `<dc:title>${inLanguage(title)}</dc:title>`,
    ...(author === '' ? [] : [`<dc:creator><rdf:Seq><rdf:li>${x(author)}</rdf:li></rdf:Seq></dc:creator>`]),
    `<dc:description>${inLanguage(subject)}</dc:description>`,
    `<dc:subject><rdf:Bag>${bag}</rdf:Bag></dc:subject>`,
    `<dc:language><rdf:Bag><rdf:li>${x(language)}</rdf:li></rdf:Bag></dc:language>`,
    `<dc:identifier>urn:sha256:${digest}</dc:identifier>`,
    `<pdf:Keywords>${x(keywords.join(' '))}</pdf:Keywords>`,
    `<xmp:CreatorTool>${x(creator)}</xmp:CreatorTool>`,
    `<xmp:CreateDate>${date}</xmp:CreateDate>`,
    `<xmp:ModifyDate>${date}</xmp:ModifyDate>`,
    `<xmp:MetadataDate>${date}</xmp:MetadataDate>`,
  ];
  return `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
${lines.join('\n')}
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>
`;
}

/** Puts the metadata into the document, unpacked, so that programs that know nothing of PDF find it. */
export function writeXmp(doc: PDFDocument, xmp: string): void {
  const stream = doc.context.stream(Buffer.from(xmp), { Type: 'Metadata', Subtype: 'XML' });
  doc.catalog.set(PDFName.of('Metadata'), doc.context.register(stream));
}
