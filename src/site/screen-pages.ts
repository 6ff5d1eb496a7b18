import { anchorsOf, chapterAnchor, endOf } from '../packet/anchors.ts';
import type { Chapter, Packet, Section } from '../packet/packet.ts';
import type { Text } from '../packet/text.ts';

/** A page on screen: a chapter, or one section of a chapter whose sections stand on pages of their own. */
export interface ScreenPage {
  /** Below the revision's folder, without ending: `summary`, `calculations/stage`; the cover is `index`. */
  readonly path: string;
  readonly number: string;
  readonly title: string;
  readonly chapter: Chapter;
  /** Those it shows whole. */
  readonly sections: readonly Section[];
  /** Shows the chapter's head and blocks. */
  readonly opensChapter: boolean;
  /** Anchors of its first and behind its last line, for the printed pages it stands on. */
  readonly from: string;
  readonly to: string;
}

/** The pages of a packet in reading order. */
export function screenPages(packet: Packet): readonly ScreenPage[] {
  return packet.chapters.flatMap((chapter) => {
    const anchor = chapterAnchor(chapter);
    const opening = {
      path: chapter.slug === 'cover' ? 'index' : chapter.slug,
      number: String(chapter.number),
      title: chapter.title,
      chapter,
      opensChapter: true,
      from: anchor,
    };
    if (!chapter.sectionPages) return [{ ...opening, sections: chapter.sections, to: endOf(anchor) }];
    const sections = chapter.sections.map((section) => ({
      path: `${chapter.slug}/${section.id}`,
      number: section.number,
      title: section.title,
      chapter,
      sections: [section],
      opensChapter: false,
      from: section.id,
      to: endOf(section.id),
    }));
    return [{ ...opening, sections: [], to: anchor }, ...sections];
  });
}

/** Address of a page in the site. `addressOf(packet, 'summary')` → `/orchard-cart/rev-b/summary` */
export function addressOf(packet: Pick<Packet, 'board' | 'revision'>, path: string): string {
  return `/${packet.board}/${packet.revision}/${path === 'index' ? '' : path}`;
}

/** Where the printed packet lies, which is made when the site is built. */
export function printedAddress(packet: Pick<Packet, 'board' | 'revision'>): string {
  return addressOf(packet, 'packet.pdf');
}

/** Turns an anchor into an address. @throws when the packet has no such anchor */
export type Links = (anchor: string) => string;

/** Links of the screen pages: to the page on which the anchor stands. */
export function screenLinks(packet: Packet): Links {
  const addresses = new Map<string, string>();
  for (const { id, chapter, section } of anchorsOf(packet)) {
    if (addresses.has(id)) throw new Error(`${packet.board}/${packet.revision}: two things have the anchor "${id}".`);
    const path = chapter.sectionPages && section ? `${chapter.slug}/${section}` : chapter.slug;
    addresses.set(id, `${addressOf(packet, path === 'cover' ? 'index' : path)}#${id}`);
  }
  return (anchor) => {
    const address = addresses.get(anchor);
    if (address === undefined) throw unknownAnchor(packet, anchor);
    return address;
  };
}

/** Links of the print document: inside it. A link to another page would print the name of a folder. */
export function printLinks(packet: Packet): Links {
  const anchors = new Set(anchorsOf(packet).map(({ id }) => id));
  return (anchor) => {
    if (!anchors.has(anchor)) throw unknownAnchor(packet, anchor);
    return `#${anchor}`;
  };
}

function unknownAnchor({ board, revision }: Packet, anchor: string): Error {
  return new Error(`${board}/${revision} refers to "${anchor}", which stands nowhere in the packet.`);
}

/** `text` without marks, for places that hold no markup. `plainText(['at ', { kind: 'name', text: 'stage' }])` → `at stage` */
export function plainText(text: Text): string {
  return text
    .map((part) => (typeof part === 'string' ? part : 'text' in part ? part.text : ''))
    .join('')
    .trim();
}

/** `For review` */
export function statusWord({ status }: Pick<Packet, 'status'>): string {
  return status.charAt(0).toUpperCase() + status.slice(1);
}
