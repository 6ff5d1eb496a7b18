import { mdxToMdast } from 'satteri';
import type { Board } from '../board.ts';
import { placesIn } from '../place-in-text.ts';
import type { Problem } from '../problem.ts';
import { idsFor } from './components.ts';
import type { MarkdownNode } from './markdown-node.ts';
import type { NoteBlock } from './notes.ts';
import { readBlocks } from './read-blocks.ts';

const largest = 500_000;

/**
 * A `notes.mdx` as data, or every problem that keeps it from being printed, each with line and column. The text is parsed as
 * MDX and nothing of it is run: prose, headings, lists, tables and links are read; of components only those that name a number
 * of this board; everything else is refused with its place.
 */
export function readNotes(
  text: string,
  file: string,
  board: Board,
): { notes: readonly NoteBlock[]; problems: readonly Problem[] } {
  const place = placesIn(text, file);
  if (text.length > largest) {
    const what = { code: 'file-too-large', found: `${(text.length / 1e6).toFixed(1)} MB`, expected: 'at most 0.5 MB' };
    return { notes: [], problems: [place(0, 1, '', what)] };
  }
  let root: MarkdownNode;
  try {
    root = mdxToMdast(text) as MarkdownNode;
  } catch (error) {
    return { notes: [], problems: [syntaxProblem(error as Error, text, place)] };
  }
  const problems: Problem[] = [];
  const notes = readBlocks(root, idsFor(board), ({ position }, key, what) =>
    problems.push(place(position.start.offset, position.end.offset, key, what)),
  );
  return problems.length ? { notes: [], problems } : { notes, problems };
}

/** The parser's message begins with the place: `3:7: Unexpected character …`. */
function syntaxProblem(error: Error, text: string, place: ReturnType<typeof placesIn>): Problem {
  const [, line, column, said] = /^(\d+):(\d+)(?:-\d+:\d+)?: ([\s\S]*)$/.exec(error.message) ?? [];
  if (line === undefined) throw error;
  const before = text.split('\n').slice(0, Number(line) - 1);
  const at = before.reduce((sum, row) => sum + row.length + 1, 0) + Number(column) - 1;
  const words = said!.replace(/ \((note|mdx)[\s\S]*$/, '');
  return place(at, at + 1, '', {
    code: 'mdx-syntax',
    found: `text that cannot be read (${words.charAt(0).toLowerCase()}${words.slice(1)})`,
    expected: 'prose with components such as `<Value id="bus.E" />`',
    hint: 'Write a plain < as `\\<` and a plain { as `\\{`; close every component with `/>`.',
  });
}
