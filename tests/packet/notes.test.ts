import { expect, test } from 'vitest';
import { packetOf } from '../../src/packet/packet-of.ts';
import { readNotes } from '../../src/spec/notes/read-notes.ts';
import { divider, reviewed } from './packets.ts';
import { expectSound } from './sound.ts';
import { said, sectionNamed } from './walk.ts';

test('notes are printed in chapter 15 with every number as it was found', () => {
  const { board, findings } = reviewed(divider('12 kohm'));
  const { notes, problems } = readNotes(
    `## Divider

Typical <Value id="sense.V_out" />, <Value id="sense.V_out" at="lowest" /> to <Value id="sense.V_out" at="highest" />,
<Value id="V_pack" at="range" />; <Check id="sense.full_scale" />.

- see [it](#sense)

| a |
|---|
| <Value id="sense.R_top" /> |

<Equation id="sense.V_out" />

<Figure id="sense.full_scale" />
`,
    'notes.mdx',
    board,
  );
  expect(problems).toEqual([]);
  const packet = packetOf({ ...board, notes }, findings);
  expectSound(packet);
  const { blocks, title } = sectionNamed(packet, 'decisions-notes');
  expect(title).toBe("Designer's notes");
  expect(blocks.map(({ kind }) => kind)).toEqual(['heading', 'paragraph', 'list', 'table', 'equation', 'figure']);
  // 36·12/162 = 2.66667; 30·11.88/163.38 = 2.18142, down; 42·12.12/160.62 = 3.16922, up.
  const [, paragraph] = blocks;
  expect(paragraph?.kind === 'paragraph' && said(paragraph.text)).toBe(
    'Typical 2.667 V, 2.181 V to 3.170 V, 30 to 42 V; sense.full_scale, <marginal>.',
  );
});

test('a board without notes has no section for them', () => {
  const { board, findings } = reviewed(divider('12 kohm'));
  const { chapters } = packetOf(board, findings);
  expect(chapters.some(({ slug }) => slug === 'decisions')).toBe(false);
});
