import { nearest } from '../../quantity/nearest.ts';
import { isBlockComponent, type NoteIds } from './components.ts';
import { type MarkdownNode, type Refuse, refuseNode } from './markdown-node.ts';
import type { NoteInline, NoteText } from './notes.ts';
import { readComponent } from './read-component.ts';

/** The running text of a paragraph, item or cell. */
export function readText(node: MarkdownNode, ids: NoteIds, refuse: Refuse): NoteText {
  return (node.children ?? []).flatMap((child) => inlineOf(child, ids, refuse));
}

function inlineOf(node: MarkdownNode, ids: NoteIds, refuse: Refuse): NoteInline[] {
  switch (node.type) {
    case 'text':
      return textOf(node.value ?? '');
    case 'break':
      return [' '];
    case 'inlineCode':
      return [{ kind: 'code', text: node.value ?? '' }];
    case 'strong':
    case 'emphasis':
      return marked(node, ids, refuse);
    case 'link':
      return linkOf(node, ids, refuse);
    case 'mdxJsxTextElement':
    case 'mdxJsxFlowElement':
      return componentOf(node, ids, refuse);
    default:
      refuseNode(node, refuse);
      return [];
  }
}

/** Lines of a paragraph run on. */
const textOf = (value: string): NoteInline[] => {
  const text = value.replaceAll(/\s*\n\s*/g, ' ');
  return text === '' ? [] : [text];
};

/** Strong or emphasised words; a number or name inside keeps its own look. */
function marked(node: MarkdownNode, ids: NoteIds, refuse: Refuse): NoteInline[] {
  const kind = node.type === 'strong' ? 'strong' : 'em';
  return readText(node, ids, refuse).map((one) => (typeof one === 'string' ? { kind, text: one } : one));
}

function componentOf(node: MarkdownNode, ids: NoteIds, refuse: Refuse): NoteInline[] {
  const found = readComponent(node, ids, refuse);
  if (!found) return [];
  if (isBlockComponent(found.name)) {
    refuse(node, found.name, {
      code: 'component-in-text',
      found: `\`<${found.name}>\` inside a sentence`,
      expected: 'it on a line of its own, with an empty line before and after',
    });
    return [];
  }
  return [found.name === 'Value' ? { kind: 'value', id: found.id, at: found.at } : { kind: 'check', id: found.id }];
}

function linkOf(node: MarkdownNode, ids: NoteIds, refuse: Refuse): NoteInline[] {
  const text = plainOf(node, refuse);
  const url = node.url ?? '';
  if (/^https?:\/\/[^\s"'<>]+$/.test(url)) return [{ kind: 'link', text, to: url }];
  const target = url.startsWith('#') ? ids.links.get(decoded(url.slice(1))) : undefined;
  if (target !== undefined) return [{ kind: 'link', text, to: target }];
  const [near] = url.startsWith('#') ? nearest(url.slice(1), ids.links.keys()) : [];
  refuse(node, '', {
    code: 'not-a-link',
    found: `a link to \`${url}\``,
    expected:
      'an address with https:// or http://, or `#` and the name of a circuit, result, input, check or requirement',
    ...(near ? { hint: `Did you mean \`#${near}\`?` } : {}),
  });
  return [];
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** Words alone, where no mark may stand: headings, and what is clicked on. */
export function plainOf(node: MarkdownNode, refuse: Refuse): string {
  const text = (node.children ?? [])
    .map((child): string => {
      if (child.type === 'text' || child.type === 'inlineCode') return child.value ?? '';
      if (child.type === 'strong' || child.type === 'emphasis') return plainOf(child, refuse);
      refuseNode(child, refuse);
      return '';
    })
    .join('')
    .replaceAll(/\s+/g, ' ')
    .trim();
  return text || '–';
}
