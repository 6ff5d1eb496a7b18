import { nearest } from '../../quantity/nearest.ts';
import { type ComponentName, components, type NoteIds } from './components.ts';
import type { MarkdownNode, Refuse } from './markdown-node.ts';
import { type ValueAt, valueEnds } from './notes.ts';

export interface ReadComponent {
  readonly name: ComponentName;
  readonly id: string;
  readonly at: ValueAt;
}

const names = Object.keys(components) as ComponentName[];

/** A component of the note, or undefined where something about it is wrong and was refused. */
export function readComponent(node: MarkdownNode, ids: NoteIds, refuse: Refuse): ReadComponent | undefined {
  const name = names.find((one) => one === node.name);
  if (!name) {
    refuse(node, '', {
      code: 'unknown-component',
      found: node.name ? `\`<${node.name}>\`` : 'a component without a name',
      expected: `one of ${names.map((one) => `\`<${one} … />\``).join(', ')}`,
      ...hintFor(node.name ?? '', names),
    });
    return undefined;
  }
  if (node.children?.length)
    refuse(node, name, {
      code: 'component-holds-text',
      found: `text inside \`<${name}>\``,
      expected: `\`<${name} id="…" />\``,
    });
  const given = attributesOf(node, name, refuse);
  if (!given) return undefined;
  const id = given.get('id');
  if (id === undefined) {
    refuse(node, name, {
      code: 'missing-id',
      found: `\`<${name}>\` without an id`,
      expected: `\`<${name} id="…" />\` with the name of ${components[name].of}`,
    });
    return undefined;
  }
  if (!ids[name].has(id)) {
    refuse(node, name, {
      code: 'unknown-name',
      found: `\`${id}\``,
      expected: `${components[name].of} of this board`,
      ...hintFor(id, ids[name]),
    });
    return undefined;
  }
  const at = given.get('at') ?? 'typical';
  const end = valueEnds.find((one) => one === at);
  if (!end) {
    refuse(node, name, {
      code: 'not-one-of',
      found: `\`at="${at}"\``,
      expected: `one of ${valueEnds.map((one) => `\`${one}\``).join(', ')}`,
      ...hintFor(at, valueEnds),
    });
    return undefined;
  }
  return { name, id, at: end };
}

/** Plain text in quotes is all that an attribute may be. */
function attributesOf(node: MarkdownNode, name: ComponentName, refuse: Refuse): Map<string, string> | undefined {
  const known: readonly string[] = components[name].attributes;
  const given = new Map<string, string>();
  let good = true;
  for (const { type, name: key, value } of node.attributes ?? []) {
    const wrong =
      type !== 'mdxJsxAttribute' || typeof value !== 'string'
        ? {
            code: 'not-in-notes',
            found: `an expression in \`<${name}>\``,
            expected: 'attributes in double quotes',
            hint: 'A note runs no code.',
          }
        : !known.includes(key!)
          ? {
              code: 'unknown-attribute',
              found: `the attribute \`${key}\``,
              expected: `one of ${known.map((one) => `\`${one}\``).join(', ')}`,
              ...hintFor(key!, known),
            }
          : given.has(key!)
            ? { code: 'attribute-twice', found: `the attribute \`${key}\` a second time`, expected: 'it once' }
            : undefined;
    if (wrong) {
      refuse(node, name, wrong);
      good = false;
    } else given.set(key!, (value as string).trim());
  }
  return good ? given : undefined;
}

function hintFor(typed: string, known: Iterable<string>): { hint?: string } {
  const [near] = nearest(typed, known);
  return near ? { hint: `Did you mean \`${near}\`?` } : {};
}
