import { type PDFDocument, PDFName, PDFRawStream } from 'pdf-lib';
import { dictsOfType, pageText, streamText } from './pdf-text.ts';

/** A face in a PDF that is none of the project's, and the signs that were set in it. */
export interface ForeignFont {
  readonly font: string;
  readonly signs: string;
}

/** Beginnings of the names of the faces that the packet is set in: text, apparatus, maths. */
export const ourFonts: readonly string[] = ['STIXTwoText', 'SourceSans3', 'KaTeX_'];

/**
 * Faces in the document whose name begins with none of `ours`. They get in when a sign is missing in the faces that a text
 * asks for: the browser then takes another without a word.
 */
export function foreignFonts(doc: PDFDocument, ours: readonly string[] = ourFonts): ForeignFont[] {
  const found = new Map<string, string>();
  for (const font of dictsOfType(doc, 'Font')) {
    if (font.get(PDFName.of('Subtype')) === PDFName.of('CIDFontType2')) continue; // part of a font met on its own
    const base = font.get(PDFName.of('BaseFont'));
    const name = base instanceof PDFName ? base.decodeText().replace(/^[A-Z]{6}\+/, '') : 'a font without a name';
    if (ours.some((start) => name.startsWith(start))) continue;
    const table = font.lookup(PDFName.of('ToUnicode'));
    const signs = table instanceof PDFRawStream ? [...unicodeTable(streamText(table)).values()].join('') : '';
    found.set(name, (found.get(name) ?? '') + signs);
  }
  return [...found].map(([font, signs]) => ({ font, signs }));
}

/**
 * Pages on which a sign was drawn with glyph 0, which in every font means "not in this font": the reader sees an empty box
 * or nothing. The PDF does not say reliably which sign it was; `signsInPdf` helps to find out.
 */
export function pagesWithMissingSigns(doc: PDFDocument): number[] {
  return doc.getPages().flatMap((page, index) => (drawsGlyphZero(pageText(page)) ? [index + 1] : []));
}

/** Text is shown as hexadecimal codes of four digits each. */
const drawsGlyphZero = (instructions: string): boolean => /<(?:[0-9A-F]{4})*?0000(?:[0-9A-F]{4})*>/.test(instructions);

/** All characters that some face in the document has drawn. */
export function signsInPdf(doc: PDFDocument): Set<string> {
  return new Set(
    dictsOfType(doc, 'Font').flatMap((font) => {
      const table = font.lookup(PDFName.of('ToUnicode'));
      return table instanceof PDFRawStream
        ? [...unicodeTable(streamText(table)).values()].flatMap((text) => [...text])
        : [];
    }),
  );
}

/**
 * Code → text of a ToUnicode table, from its `bfchar` and `bfrange` lines.
 * @see ISO 32000-1, 9.10.3
 */
export function unicodeTable(cmap: string): Map<number, string> {
  const table = new Map<number, string>();
  for (const [, lines] of cmap.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, code, text] of lines!.matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g)) {
      table.set(Number.parseInt(code!, 16), utf16(text!));
    }
  }
  for (const [, lines] of cmap.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, from, to, text] of lines!.matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g)) {
      const [first, last] = [Number.parseInt(from!, 16), Number.parseInt(to!, 16)];
      const start = utf16(text!).codePointAt(0)!;
      for (let code = first; code <= last; code += 1) table.set(code, String.fromCodePoint(start + code - first));
    }
  }
  return table;
}

const utf16 = (hex: string): string =>
  (hex.match(/.{4}/g) ?? []).map((unit) => String.fromCharCode(Number.parseInt(unit, 16))).join('');
