import type { Block } from '../packet/block.ts';
import type { Chapter, Section } from '../packet/packet.ts';

/** About how many printed pages sections fill together before the next one begins a new page. */
const pagesInGroup = 10;

/**
 * Sections that follow each other on the same printed pages, in a chapter whose sections are pages of their own on screen. Each
 * group begins a new page and has a running head of its own: were every section to do so, most would end on a page half empty;
 * were none, no running head could say which sections it stands over.
 */
export function sectionGroups({ sections }: Pick<Chapter, 'sections'>): readonly (readonly Section[])[] {
  const groups: Section[][] = [];
  let filled = 0;
  for (const section of sections) {
    const length = lengthOf(section);
    const last = groups.at(-1);
    if (last && filled + length / 2 <= pagesInGroup) last.push(section);
    else {
      groups.push([section]);
      filled = 0;
    }
    filled += length;
  }
  return groups;
}

/** Printed pages, roughly: what a table row takes up is the measure, of which a page holds thirty. */
const lengthOf = ({ blocks, aside }: Section): number =>
  (6 + aside.length + blocks.reduce((sum, block) => sum + rowsOf(block), 0)) / 30;

function rowsOf(block: Block): number {
  switch (block.kind) {
    case 'table':
      return 3 + block.groups.reduce((sum, { rows }) => sum + 1 + rows.length, 0);
    case 'equation':
      return 4;
    case 'drawing':
      return 7;
    case 'figure':
      return block.width === 'half' ? 5 : 10;
    default:
      return 2;
  }
}
