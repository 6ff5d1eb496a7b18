import type { Text } from '../packet/text.ts';
import { plainText } from '../site/screen-pages.ts';

/** Characters that stand in the margin beside the head of a section before its first table would have to wait for them. */
const marginHolds = 620;
/** What a paragraph takes beside its own characters: the rest of its last line. */
const paragraph = 30;

/**
 * Cuts the remarks at a section's head in two: those that the margin holds, and those that stand in columns under its first
 * paragraph. A long list in the margin would push everything below it down a page.
 */
export function splitAside(remarks: readonly Text[]): { margin: readonly Text[]; below: readonly Text[] } {
  let taken = 0;
  const last = remarks.findIndex((text) => {
    taken += plainText(text).length + paragraph;
    return taken > marginHolds;
  });
  if (last === -1) return { margin: remarks, below: [] };
  // The first remark stays where a reader looks for it, however long it is.
  const cut = Math.max(1, last);
  return { margin: remarks.slice(0, cut), below: remarks.slice(cut) };
}
