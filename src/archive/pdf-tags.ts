import { PDFArray, PDFDict, type PDFDocument, PDFHexString, PDFName, type PDFObject, PDFRef, PDFString } from 'pdf-lib';
import { dictsOfType } from './pdf-text.ts';
import { formulaMark } from './print-copy.ts';

/** Gives the formulas their own tag: the browser knows pictures only, so the print copy marks their labels. */
export function tagFormulas(doc: PDFDocument): void {
  const [kind, label] = [PDFName.of('S'), PDFName.of('Alt')];
  for (const element of dictsOfType(doc, 'StructElem')) {
    const alt = element.lookup(label);
    if (!(alt instanceof PDFHexString)) continue; // the mark is outside Latin, so such labels are hexadecimal
    const text = alt.decodeText();
    if (!text.startsWith(formulaMark)) continue;
    element.set(kind, PDFName.of('Formula'));
    element.set(label, PDFHexString.fromText(text.slice(formulaMark.length)));
  }
}

/** Kinds of tag that PDF 1.7 does not know, and the ones that it knows them by. @see ISO 32000-1, 14.8.4; ISO 32000-2, 14.8.4 */
const newerKinds: Readonly<Record<string, string>> = {
  Strong: 'Span',
  Em: 'Span',
  Sub: 'Span',
  Title: 'P',
  Aside: 'Note',
  FENote: 'Note',
  DocumentFragment: 'Div',
};

/** Explains tags of PDF 2.0 to readers of PDF 1.7; the browser writes them without. */
export function mapNewerTags(doc: PDFDocument): void {
  const root = doc.catalog.lookup(PDFName.of('StructTreeRoot'));
  if (!(root instanceof PDFDict)) return;
  const used = new Set(dictsOfType(doc, 'StructElem').map((element) => element.get(PDFName.of('S'))));
  const map = Object.entries(newerKinds).filter(([kind]) => used.has(PDFName.of(kind)));
  if (map.length > 0) root.set(PDFName.of('RoleMap'), doc.context.obj(Object.fromEntries(map)));
}

/** Links are reached by the tabulator in the order of the tags. @see ISO 14289-1, 7.18.3 */
export function tabInReadingOrder(doc: PDFDocument): void {
  for (const page of doc.getPages()) if (page.node.Annots()) page.node.set(PDFName.of('Tabs'), PDFName.of('S'));
}

const elementId = /^node\d+$/;

/**
 * Numbers the ids of tags by first appearance. The browser takes them from counters that depend on what it did before, so
 * two prints of one document would differ.
 */
export function renumberTagIds(doc: PDFDocument): void {
  const renamed = new Map<string, PDFString>();
  const rename = (id: string): PDFString => {
    const known = renamed.get(id) ?? PDFString.of(`node${String(renamed.size + 1).padStart(8, '0')}`);
    renamed.set(id, known);
    return known;
  };
  const walk = (object: PDFObject): void => {
    if (object instanceof PDFArray) {
      for (const [index, item] of object.asArray().entries()) {
        if (isId(item)) object.set(index, rename(item.asString()));
        else walk(item);
      }
    } else if (object instanceof PDFDict) {
      for (const [key, item] of object.entries()) {
        if (isId(item)) object.set(key, rename(item.asString()));
        else walk(item);
      }
    }
  };
  for (const element of dictsOfType(doc, 'StructElem')) walk(element);
  rebuildIdTree(doc, rename);
}

const isId = (object: PDFObject): object is PDFString =>
  object instanceof PDFString && elementId.test(object.asString());

/** The tree of ids has to be in the order of the new names; one node without branches is allowed whatever its length. */
function rebuildIdTree(doc: PDFDocument, rename: (id: string) => PDFString): void {
  const root = doc.catalog.lookup(PDFName.of('StructTreeRoot'));
  const tree = root instanceof PDFDict ? root.lookup(PDFName.of('IDTree')) : undefined;
  if (!(tree instanceof PDFDict)) return;
  const entries = takeIdEntries(tree).map(([id, target]) => [rename(id), target] as const);
  entries.sort(([a], [b]) => (a.asString() < b.asString() ? -1 : 1));
  tree.set(PDFName.of('Names'), doc.context.obj(entries.flat()));
}

/** Empties a node of the tree of ids and removes its branches from the document. */
function takeIdEntries(node: PDFDict): [id: string, target: PDFObject][] {
  const kids = node.lookup(PDFName.of('Kids'));
  const names = node.lookup(PDFName.of('Names'));
  for (const key of ['Kids', 'Names', 'Limits']) node.delete(PDFName.of(key));
  const inBranches = (kids instanceof PDFArray ? kids.asArray() : []).flatMap((kid) => {
    const branch = node.context.lookup(kid, PDFDict);
    if (kid instanceof PDFRef) node.context.delete(kid);
    return takeIdEntries(branch);
  });
  const own: [string, PDFObject][] = [];
  const items = names instanceof PDFArray ? names.asArray() : [];
  for (let at = 0; at + 1 < items.length; at += 2) {
    const name = items[at];
    if (name instanceof PDFString) own.push([name.asString(), items[at + 1]!]);
  }
  return [...inBranches, ...own];
}
