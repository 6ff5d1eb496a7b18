import type { Block } from '../block.ts';
import { chapterHeads, type Slug } from '../chapter-list.ts';
import { numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';

/** A chapter with the number, title and question that stand for its slug. */
export function chapter(
  slug: Slug,
  blocks: readonly Block[],
  sections: readonly Section[] = [],
  more: Partial<Chapter> = {},
): Chapter {
  return { slug, ...chapterHeads[slug], blocks, sections, ...more };
}

/** A section `3.2` of a chapter; its anchor is `summary-requirements`. */
export function section(
  slug: Slug,
  position: number,
  id: string,
  title: string,
  blocks: readonly Block[],
  aside: Section['aside'] = [],
): Section {
  return { id: `${slug}-${id}`, number: `${chapterHeads[slug].number}.${position}`, title, aside, blocks };
}

/** Sections and their tables in running numbers; those that a board gives nothing to say are not counted. */
export function renumbered(slug: Slug, sections: readonly (Section | undefined)[]): Section[] {
  const numbers = numbering(chapterHeads[slug].number);
  return sections
    .filter((one) => one !== undefined)
    .map((one, i) => ({
      ...one,
      number: `${chapterHeads[slug].number}.${i + 1}`,
      blocks: one.blocks.map((block) => (block.kind === 'table' ? { ...block, number: numbers.table() } : block)),
    }));
}
