import type { NoteIds } from './components.ts';
import { type MarkdownNode, type Refuse, refuseNode } from './markdown-node.ts';
import type { NoteBlock, NoteInline, NoteText } from './notes.ts';
import { readComponent } from './read-component.ts';
import { plainOf, readText } from './read-text.ts';

export function readBlocks(root: MarkdownNode, ids: NoteIds, refuse: Refuse): NoteBlock[] {
  return (root.children ?? []).flatMap((node): NoteBlock[] => {
    switch (node.type) {
      case 'paragraph':
        return filled(readText(node, ids, refuse)).map((text) => ({ kind: 'paragraph', text }));
      case 'heading':
        return [{ kind: 'heading', text: plainOf(node, refuse) }];
      case 'list':
        return [
          {
            kind: 'list',
            ordered: node.ordered ?? false,
            items: (node.children ?? []).map((item) => itemOf(item, ids, refuse)),
          },
        ];
      case 'table':
        return tableOf(node, ids, refuse);
      case 'mdxJsxFlowElement':
        return componentBlock(node, ids, refuse);
      default:
        refuseNode(node, refuse);
        return [];
    }
  });
}

const filled = (text: NoteText): NoteText[] =>
  text.some((one) => typeof one !== 'string' || one.trim()) ? [text] : [];

/** One paragraph an item: what needs more is a section. */
function itemOf(item: MarkdownNode, ids: NoteIds, refuse: Refuse): NoteText {
  const [first, ...more] = item.children ?? [];
  for (const node of more)
    refuse(node, '', {
      code: 'not-in-notes',
      found: node.type === 'list' ? 'a list inside a list' : 'more than one paragraph in an item',
      expected: 'one paragraph an item',
      hint: 'Write it as a sentence, or as a section of its own.',
    });
  if (first?.type === 'paragraph') return readText(first, ids, refuse);
  if (first) refuseNode(first, refuse);
  return ['–'];
}

function tableOf(node: MarkdownNode, ids: NoteIds, refuse: Refuse): NoteBlock[] {
  const cellOf = (cell: MarkdownNode): NoteText => filled(readText(cell, ids, refuse))[0] ?? ['–'];
  const [head, ...rows] = (node.children ?? []).map((row) => (row.children ?? []).map(cellOf));
  if (!head) return [];
  // A short row lacks its last cells, and one that is too long has no heading for them.
  const even = rows.map((row) => head.map((_, i) => row[i] ?? ['–']));
  return [{ kind: 'table', head, rows: even }];
}

function componentBlock(node: MarkdownNode, ids: NoteIds, refuse: Refuse): NoteBlock[] {
  const found = readComponent(node, ids, refuse);
  if (!found) return [];
  if (found.name === 'Equation') return [{ kind: 'equation', id: found.id }];
  if (found.name === 'Figure') return [{ kind: 'figure', id: found.id }];
  const inline: NoteInline =
    found.name === 'Value' ? { kind: 'value', id: found.id, at: found.at } : { kind: 'check', id: found.id };
  return [{ kind: 'paragraph', text: [inline] }];
}
