import type { Block } from './block.ts';
import type { Chapter, Packet, Section } from './packet.ts';

/**
 * Anchor of a chapter. The hyphen keeps it apart from circuits and results, whose names hold none.
 * `chapterAnchor({ slug: 'summary', … })` → `chapter-summary`
 */
export function chapterAnchor(chapter: Pick<Chapter, 'slug'>): string {
  return `chapter-${chapter.slug}`;
}

/** Anchor behind the last line of the packet; its page is the number of pages. */
export const packetEnd = 'packet-end';

/** Every anchor of the packet with the chapter, and the section if any, in which it stands. */
export function anchorsOf(packet: Packet): readonly Anchor[] {
  return packet.chapters.flatMap((chapter) => [
    { id: chapterAnchor(chapter), chapter },
    ...blockAnchors(chapter.blocks).map((id) => ({ id, chapter })),
    ...chapter.sections.flatMap((section) =>
      [section.id, ...blockAnchors(section.blocks)].map((id) => ({ id, chapter, section })),
    ),
  ]);
}

export interface Anchor {
  readonly id: string;
  readonly chapter: Chapter;
  readonly section?: Section;
}

function blockAnchors(blocks: readonly Block[]): string[] {
  return blocks.flatMap((block) => {
    const own = 'id' in block && block.id !== undefined ? [block.id] : [];
    const rows = block.kind === 'table' ? block.groups.flatMap((group) => group.rows) : [];
    return [...own, ...rows.flatMap((row) => row.id ?? [])];
  });
}

/** Anchor behind the last line of a chapter or a section, given the anchor of its head. `endOf('stage')` → `stage-end` */
export function endOf(anchor: string): string {
  return `${anchor}-end`;
}
