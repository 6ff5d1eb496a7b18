/**
 * Where in the print document a fault of its text comes from. Both run inside the page: they use nothing from outside
 * themselves, and are called only after a print showed that something is wrong.
 */

/** The first element that holds each of the signs, in its own text; only of signs that the document holds. */
export function elementsWithSigns(signs: string[]): Element[] {
  const left = new Set(signs);
  const found: Element[] = [];
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (left.size > 0 && texts.nextNode() !== null) {
    const here = [...left].filter((sign) => texts.currentNode.nodeValue?.includes(sign));
    if (here.length > 0 && texts.currentNode.parentElement !== null) found.push(texts.currentNode.parentElement);
    for (const sign of here) left.delete(sign);
  }
  return found;
}

/** Elements with text of their own whose first font family is not one that the document declares; at most five. */
export function elementsInOtherFaces(): Element[] {
  const plain = (family: string): string => family.replaceAll(/["']/g, '').trim();
  const declared = new Set([...document.fonts].map((face) => plain(face.family)));
  const found = new Set<Element>();
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (found.size < 5 && texts.nextNode() !== null) {
    const element = texts.currentNode.parentElement;
    if (element === null || texts.currentNode.nodeValue?.trim() === '' || !element.checkVisibility()) continue;
    if (!declared.has(plain(getComputedStyle(element).fontFamily.split(',')[0]!))) found.add(element);
  }
  return [...found];
}

/** All characters of the document's text that can be seen. */
export function signsInDocument(): string[] {
  const signs = new Set<string>();
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (texts.nextNode() !== null) {
    if (texts.currentNode.parentElement?.checkVisibility() === true) {
      for (const sign of texts.currentNode.nodeValue ?? '') if (!/[\s\p{Cf}]/u.test(sign)) signs.add(sign);
    }
  }
  return [...signs];
}
