import { describe, expect, test } from 'vitest';
import { readNotes } from '../../../src/spec/notes/read-notes.ts';
import { showProblems } from '../../../src/spec/problem.ts';
import { divider } from '../../packet/packets.ts';
import { boardFrom } from '../spec-text.ts';

const board = boardFrom(`requirements: { REQ-1: { says: The pack shall be measured } }\n${divider('12 kohm')}`);
const read = (text: string) => readNotes(text, 'notes.mdx', board);
const messages = (text: string): string => showProblems(read(text).problems);

describe('a note', () => {
  test('is prose, headings, lists and tables with live values in them', () => {
    const { notes, problems } = read(`## Why *this* divider

Reads <Value id="sense.V_out" at="range" />, **at most <Value id="V_pack" at="highest"/>**
and see [the check](#sense.full_scale), [Ohm](https://example.org/ohm), \`R_top\`. <Check id="sense.floor" /> 5 \\< 6.

- one
- two

1. first

| a | b |
|---|---|
| 1 | <Value id="sense.R_top" /> |

<Equation id="sense.V_out" />

<Figure id="sense.full_scale" />
`);
    expect(problems).toEqual([]);
    expect(notes).toEqual([
      { kind: 'heading', text: 'Why this divider' },
      {
        kind: 'paragraph',
        text: [
          'Reads ',
          { kind: 'value', id: 'sense.V_out', at: 'range' },
          ', ',
          { kind: 'strong', text: 'at most ' },
          { kind: 'value', id: 'V_pack', at: 'highest' },
          ' and see ',
          { kind: 'link', text: 'the check', to: 'check-sense.full_scale' },
          ', ',
          { kind: 'link', text: 'Ohm', to: 'https://example.org/ohm' },
          ', ',
          { kind: 'code', text: 'R_top' },
          '. ',
          { kind: 'check', id: 'sense.floor' },
          ' 5 < 6.',
        ],
      },
      { kind: 'list', ordered: false, items: [['one'], ['two']] },
      { kind: 'list', ordered: true, items: [['first']] },
      { kind: 'table', head: [['a'], ['b']], rows: [[['1'], [{ kind: 'value', id: 'sense.R_top', at: 'typical' }]]] },
      { kind: 'equation', id: 'sense.V_out' },
      { kind: 'figure', id: 'sense.full_scale' },
    ]);
  });
  test('may be empty', () => {
    expect(read('')).toEqual({ notes: [], problems: [] });
  });
});

describe('a wrong name is shown with file, line and column', () => {
  test('in a sentence', () => {
    expect(messages('one\n\nIt is <Value id="sense.V_uot" /> here.\n')).toMatchInlineSnapshot(`
      "notes.mdx:3:7  unknown-name
        Value: found \`sense.V_uot\`; expected a result, input or condition of this board.
        2 |
        3 | It is <Value id="sense.V_uot" /> here.
          |       ^^^^^^^^^^^^^^^^^^^^^^^^^^
        Did you mean \`sense.V_out\`?"
    `);
  });
  test.each([
    ['a check', 'x <Check id="sense.fullscale" />', /1:3 {2}unknown-name[\s\S]*Did you mean `sense\.full_scale`/],
    ['an equation of an input', '<Equation id="sense.R_top" />', /1:1 {2}unknown-name[\s\S]*a result of this board/],
    ['a component', '<Valu id="sense.V_out" />', /1:1 {2}unknown-component[\s\S]*Did you mean `Value`/],
    ['an attribute', '<Value di="sense.V_out" />', /1:1 {2}unknown-attribute/],
    ['an end', '<Value id="sense.V_out" at="hihgest" />', /1:1 {2}not-one-of[\s\S]*Did you mean `highest`/],
    ['no id', '<Value />', /1:1 {2}missing-id/],
    ['a place to go to', 'See [it](#sense.full_scal).', /1:5 {2}not-a-link[\s\S]*Did you mean `#sense\.full_scale`/],
  ])('%s', (_, text, message) => {
    expect(messages(`${text}\n`)).toMatch(message);
    expect(read(text).notes).toEqual([]);
  });
});

/** Whatever could run, load or change the page is refused; what is left is data without markup. */
describe('a note cannot run or load anything', () => {
  test.each([
    ['an import', "import x from 'fs'\n", /1:1 {2}not-in-notes[\s\S]*runs no code/],
    ['an export', 'export const a = 1\n', /1:1 {2}not-in-notes/],
    ['an expression', 'a {process.env.HOME} b', /1:3 {2}not-in-notes[\s\S]*runs no code/],
    ['an expression of its own', '{1 + 1}', /1:1 {2}not-in-notes/],
    ['a comment in braces', '{/* x */}', /1:1 {2}not-in-notes/],
    ['an expression in an attribute', '<Value id={"sense.V_out"} />', /1:1 {2}not-in-notes[\s\S]*an expression/],
    ['attributes spread', '<Value {...x} />', /1:1 {2}not-in-notes/],
    ['a script', '<script>alert(1)</script>', /1:1 {2}unknown-component/],
    ['a style', '<style>p { color: red }</style>', /unknown-component|not-in-notes|mdx-syntax/],
    ['a frame', '<iframe src="https://example.org" />', /1:1 {2}unknown-component/],
    ['markup in a sentence', 'a <b onclick="x()">b</b>', /1:3 {2}unknown-component/],
    ['a fragment', '<>x</>', /1:1 {2}unknown-component/],
    ['a member', '<Value.x id="sense.V_out" />', /1:1 {2}unknown-component/],
    ['text in a component', '<Check id="sense.floor">x</Check>', /component-holds-text/],
    ['a block component in a sentence', 'a <Equation id="sense.V_out" /> b', /1:3 {2}component-in-text/],
    ['a comment of HTML', 'a\n\n<!-- x -->', /3:1 {2}mdx-syntax/],
    ['a component that is not closed', '<Value id="x">', /1:1 {2}mdx-syntax/],
    ['a picture', '![x](https://example.org/x.png)', /1:1 {2}not-in-notes[\s\S]*<Figure/],
    ['a link that runs', '[x](javascript:alert(1))', /1:1 {2}not-a-link/],
    ['a link with data', '[x](data:text/html,hi)', /not-a-link/],
    ['a link to a file', '[x](../../secret.txt)', /not-a-link/],
    ['a link by reference', '[x]\n\n[x]: https://example.org', /1:1 {2}not-in-notes/],
    ['a block of code', '```js\nx\n```', /1:1 {2}not-in-notes/],
    ['a quotation', '> x', /1:1 {2}not-in-notes/],
    ['a list in a list', '- a\n  - b', /2:3 {2}not-in-notes/],
    ['a head of YAML', '---\na: 1\n---\n', /1:1 {2}not-in-notes/],
    ['a footnote', 'a[^1]\n\n[^1]: b', /not-in-notes/],
  ])('%s', (_, text, message) => {
    const { notes, problems } = read(text);
    expect(notes).toEqual([]);
    expect(showProblems(problems)).toMatch(message);
  });
  test('characters that a page would take for markup stay characters', () => {
    const { notes } = read('a &lt;script&gt; \\<b\\> & "c"');
    expect(notes).toEqual([{ kind: 'paragraph', text: ['a <script> <b> & "c"'] }]);
  });
  test('all problems at once', () => {
    expect(read('{x}\n\n<b>y</b>\n\n> z\n').problems).toHaveLength(3);
  });
});
