import type { Block, Figure, Legend, Note } from '../packet/block.ts';

/** A block with what stands beside it in the margin, or two half-width figures that share a line. */
export type Arranged =
  | { readonly kind: 'noted'; readonly notes: readonly (Note | Legend)[]; readonly block?: Block }
  | { readonly kind: 'halves'; readonly figures: readonly Figure[] };

/** Joins notes to the block that follows them, and half-width figures to pairs. */
export function arranged(blocks: readonly Block[]): Arranged[] {
  const result: Arranged[] = [];
  let notes: (Note | Legend)[] = [];
  for (const block of blocks) {
    const last = result.at(-1);
    if (block.kind === 'note' || block.kind === 'legend') {
      notes.push(block);
    } else if (isHalf(block) && notes.length === 0 && last?.kind === 'halves' && last.figures.length < 2) {
      result[result.length - 1] = { kind: 'halves', figures: [...last.figures, block] };
    } else if (isHalf(block) && notes.length === 0) {
      result.push({ kind: 'halves', figures: [block] });
    } else {
      result.push({ kind: 'noted', notes, block });
      notes = [];
    }
  }
  return notes.length > 0 ? [...result, { kind: 'noted', notes }] : result;
}

function isHalf(block: Block): block is Figure {
  return block.kind === 'figure' && block.width === 'half';
}
