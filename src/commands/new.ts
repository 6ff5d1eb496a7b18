import { mkdir, stat, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { readDesigns } from '../site/designs.ts';
import { loadHandbook } from '../site/handbook-files.ts';
import { readOptions, UsageError } from '../site/options.ts';
import type { Handbook } from '../spec/method-schema.ts';
import { type ExitStatus, runWords } from './run.ts';
import { starterSpec } from './starter-spec.ts';
import { textTable } from './text-table.ts';

const usage =
  'expected `npm run new -- my-board`, `npm run new -- my-board --from other-board/rev-a`, or `npm run new -- --list`';

/** Makes a design folder with a commented spec that builds, or a new revision from another; --list shows the methods. */
async function make(words: readonly string[]): Promise<ExitStatus> {
  if (words.includes('--list')) {
    console.log(methodList(loadHandbook()));
    return 0;
  }
  const at = words.indexOf('--from');
  const from = at < 0 ? undefined : words[at + 1];
  if (at >= 0 && from === undefined) throw new UsageError(`found --from with nothing behind it; ${usage}.`);
  const { designs, only } = readOptions(at < 0 ? words : words.toSpliced(at, 2));
  const board = only[0];
  if (board === undefined || only.length > 1 || !/^[a-z0-9][a-z0-9-]*$/.test(board)) {
    throw new UsageError(
      `found ${only.length ? `\`${only.join(' ')}\`` : 'no name'}; ${usage}: small letters, digits and hyphens.`,
    );
  }
  const { revision, text } =
    from === undefined ? { revision: 'rev-a', text: starterSpec(board) } : await copyOf(designs, board, from);
  const path = join(designs, board, revision, 'spec.yaml');
  if (
    await stat(path).then(
      () => true,
      () => false,
    )
  )
    throw new UsageError(`found ${relative(process.cwd(), path)} there already; it was left as it is. ${usage}.`);
  await mkdir(join(designs, board, revision), { recursive: true });
  await writeFile(path, text, { flag: 'wx' });
  console.log(`${relative(process.cwd(), path)} is written. Next: npm run check -- ${board}/${revision}`);
  return 0;
}

/** The next revision of the same board, or another board's spec under a new name. */
async function copyOf(designs: string, board: string, from: string): Promise<{ revision: string; text: string }> {
  const source = readDesigns(designs)
    .filter(
      (d) => from === `${d.board}/${d.revision}` || (d.board === board && d.revision === from) || from === d.board,
    )
    .at(-1);
  if (!source) throw new UsageError(`found no design \`${from}\` in ${designs}; expected board/revision.`);
  const text = source.files.get('spec.yaml')!;
  if (source.board !== board) return { revision: 'rev-a', text: renewed(text, 'A', undefined) };
  const taken = new Set(readDesigns(designs, [board]).map(({ revision }) => revision));
  const letter = [...'abcdefghijklmnopqrstuvwxyz'].find((one) => !taken.has(`rev-${one}`));
  if (!letter) throw new UsageError(`found every revision from rev-a to rev-z taken; expected a free letter.`);
  return { revision: `rev-${letter}`, text: renewed(text, letter.toUpperCase(), source.revision) };
}

/** A copy is a draft again and says what it replaces; the engineer's comments and order stay. */
function renewed(text: string, mark: string, supersedes: string | undefined): string {
  const lines = text.split('\n').filter((line) => !line.startsWith('supersedes:'));
  return lines
    .map((line) =>
      line
        .replace(/^revision:.*/, `revision: ${mark}${supersedes ? `\nsupersedes: ${supersedes}` : ''}`)
        .replace(/^status:.*/, 'status: draft'),
    )
    .join('\n');
}

function methodList({ methods }: Handbook): string {
  const rows = [...methods.values()]
    .sort((a, b) => (a.place + a.id < b.place + b.id ? -1 : 1))
    .map(({ id, place, title }) => [place, id, title]);
  return textTable(['place', 'method', 'what it is'], rows);
}

await runWords(make);
