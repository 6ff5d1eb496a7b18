import { type Anchor, anchorsOf, chapterAnchor, endOf } from '../packet/anchors.ts';
import type { Chapter, Packet, Section } from '../packet/packet.ts';
import type { Text } from '../packet/text.ts';
import { pdfName } from './pdf-name.ts';

/** A page on screen: a chapter, or one section of a chapter whose sections stand on pages of their own. */
export interface ScreenPage {
  /** Below the revision's folder, without ending: `index`, `summary`, `calculations/stage`. */
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

/** The pages of a packet in reading order; the first is the folder's `index`. */
export function screenPages(packet: Packet): readonly ScreenPage[] {
  return packet.chapters.flatMap((chapter, index) => {
    const anchor = chapterAnchor(chapter);
    const opening = {
      path: index === 0 ? 'index' : chapter.slug,
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
export function printedAddress(packet: Pick<Packet, 'board' | 'revision' | 'document' | 'revisionMark'>): string {
  return addressOf(packet, pdfName(packet));
}

/** Where the anchors of a packet stand. Both throw when the packet has no such anchor. */
export interface Links {
  address(anchor: string): string;
  /** Page of a method in the handbook; undefined in print, where a link would lead out of the document. */
  method(id: string): string | undefined;
  /** Number of the section, or of the chapter, in which it stands: `7.4`, `chapter 3`. */
  number(anchor: string): string;
}

/** Links of the screen pages: to the page on which the anchor stands. */
export function screenLinks(packet: Packet): Links {
  return links(
    packet,
    ({ id, chapter, section }) => {
      const path = chapter.sectionPages && section ? `${chapter.slug}/${section.id}` : chapter.slug;
      return `${addressOf(packet, chapter === packet.chapters[0] ? 'index' : path)}#${id}`;
    },
    methodAddress,
  );
}

/** Links of the print document: inside it. A link to another page would print the name of a folder. */
export function printLinks(packet: Packet): Links {
  return links(
    packet,
    ({ id }) => `#${id}`,
    () => undefined,
  );
}

/** Address of a method's page. `methodAddress('ntc')` → `/handbook/ntc` */
export const methodAddress = (id: string): string => `/handbook/${id}`;

function links(packet: Packet, address: (anchor: Anchor) => string, method: Links['method']): Links {
  const anchors = new Map<string, Anchor>();
  for (const anchor of anchorsOf(packet)) {
    if (anchors.has(anchor.id)) throw new Error(`${nameOf(packet)}: two things have the anchor "${anchor.id}".`);
    anchors.set(anchor.id, anchor);
  }
  const find = (id: string): Anchor => {
    const anchor = anchors.get(id);
    if (!anchor) throw new Error(`${nameOf(packet)} refers to "${id}", which stands nowhere in the packet.`);
    return anchor;
  };
  return {
    address: (id) => address(find(id)),
    method,
    number: (id) => {
      const { section, chapter } = find(id);
      return section ? section.number : `chapter ${chapter.number}`;
    },
  };
}

const nameOf = ({ board, revision }: Packet): string => `${board}/${revision}`;

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
