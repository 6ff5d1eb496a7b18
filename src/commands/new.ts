import { existsSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type DesignFolder, readDesigns } from '../site/designs.ts';
import { loadHandbook } from '../site/handbook-files.ts';
import { readOptions, UsageError } from '../site/options.ts';
import { schemaName } from '../site/schema-file.ts';
import { methodList } from './method-list.ts';
import { advanced, renewed } from './next-revision.ts';
import { say } from './printable.ts';
import { type ExitStatus, runWords } from './run.ts';
import { starterSpec } from './starter-spec.ts';

const usage =
  'expected `npm run new -- my-board`, `npm run new -- my-board --from rev-a` (or another-board/rev-a), or `npm run new -- --list`';

/** Makes a design folder with a commented spec that builds, or a new revision from another; --list shows the methods. */
async function make(words: readonly string[]): Promise<ExitStatus> {
  if (words.includes('--list')) {
    const { designs } = readOptions(words.filter((word) => word !== '--list'));
    say(methodList(loadHandbook(designs), process.stdout.columns ?? 100));
    return 0;
  }
  const { from, rest } = fromOf(words);
  const { designs, only } = readOptions(rest);
  const board = only[0];
  if (board === undefined || only.length > 1 || !/^[a-z0-9][a-z0-9-]*$/.test(board))
    throw new UsageError(
      `found ${only.length ? `\`${only.join(' ')}\`` : 'no name'}; ${usage}: a name of small letters, digits and hyphens.`,
    );
  const made = from === undefined ? fromBlank(board) : copyOf(designs, board, from);
  const folder = join(designs, board, made.revision);
  const path = join(folder, 'spec.yaml');
  if (existsSync(path))
    throw new UsageError(
      `found ${shown(path)} there already; it was left as it is. The next revision: \`npm run new -- ${board} --from ${made.revision}\`.`,
    );
  await mkdir(folder, { recursive: true });
  await writeFile(path, withSchema(made.text, folder, designs), { flag: 'wx' });
  for (const [name, text] of made.beside) await writeFile(join(folder, name), text, { flag: 'wx' });
  say([`${shown(path)} is written.`, ...made.notes, `Next: npm run check -- ${board}/${made.revision}`].join('\n'));
  return 0;
}

interface Made {
  readonly revision: string;
  readonly text: string;
  /** Further files of the revision, by name. */
  readonly beside: readonly (readonly [string, string])[];
  /** What the engineer should look at. */
  readonly notes: readonly string[];
}

const shown = (path: string): string => relative(process.cwd(), path);
const today = (): string => new Date().toISOString().slice(0, 10);

const fromBlank = (board: string): Made => ({
  revision: 'rev-a',
  text: starterSpec(board, today()),
  beside: [],
  notes: [],
});

/** The word behind --from, and the others. */
function fromOf(words: readonly string[]): { from: string | undefined; rest: readonly string[] } {
  const at = words.findIndex((word) => word === '--from' || word.startsWith('--from='));
  if (at < 0) return { from: undefined, rest: words };
  const inline = words[at] === '--from' ? undefined : words[at]!.slice('--from='.length);
  const from = inline ?? words[at + 1];
  if (!from) throw new UsageError(`found --from with nothing behind it; ${usage}.`);
  return { from: from.replace(/\/+$/, ''), rest: words.toSpliced(at, inline === undefined ? 2 : 1) };
}

/** The next revision of the same board, or another board's spec under a new name. */
function copyOf(designs: string, board: string, from: string): Made {
  const all = readDesigns(designs);
  const source = all
    .filter(
      (d) => from === `${d.board}/${d.revision}` || (d.board === board && d.revision === from) || from === d.board,
    )
    .at(-1);
  if (!source) {
    const known = all.map((d) => `${d.board}/${d.revision}`).join(', ');
    throw new UsageError(
      `found no design \`${from}\` in ${designs}; expected one of ${known || 'none there are yet'}.`,
    );
  }
  return source.board === board ? nextOf(source, all) : otherBoard(source, board);
}

function otherBoard(source: DesignFolder, board: string): Made {
  const text = source.files.get('spec.yaml')!;
  const title = board.replaceAll('-', ' ').replace(/^./, (first) => first.toUpperCase());
  return {
    revision: 'rev-a',
    text: renewed(text, { mark: 'A', issued: today(), board: title, document: 'DOC-1' }),
    beside: copied(source),
    notes: [
      'Look at: board, document and purpose, which are still to be written for this board.',
      ...decided(source, 'They were decided for another board.'),
    ],
  };
}

function nextOf(source: DesignFolder, all: readonly DesignFolder[]): Made {
  const taken = new Set(all.filter(({ board }) => board === source.board).map(({ revision }) => revision));
  const text = source.files.get('spec.yaml')!;
  let revision: string | undefined = source.revision;
  let mark: string | undefined = /^revision:[ \t]*["']?([^"'#\s]+)/m.exec(text)?.[1] ?? 'A';
  do {
    revision = advanced(revision);
    mark = mark && advanced(mark);
  } while (revision !== undefined && taken.has(revision));
  if (revision === undefined)
    throw new UsageError(
      `found the folder name \`${source.revision}\`, after which nothing follows; expected one that ends in a letter or a number, such as \`rev-a\` or \`2\`.`,
    );
  const stays = ['notes.mdx', 'bench.csv'].filter((name) => source.files.has(name));
  return {
    revision,
    text: renewed(text, { mark: mark ?? revision, supersedes: source.revision, issued: today() }),
    beside: copied(source),
    notes: [
      `It supersedes ${source.revision}, is a draft, and is dated today.`,
      ...(stays.length ? [`Left with ${source.revision}, whose record they are: ${stays.join(', ')}.`] : []),
      ...decided(source, `They were decided for ${source.revision}.`),
    ],
  };
}

/** A parts list belongs to the design; notes and bench readings belong to the revision they were made on. */
const copied = ({ files }: DesignFolder): [string, string][] =>
  ['parts.csv'].flatMap((name) => (files.has(name) ? [[name, files.get(name)!]] : []));

function decided(source: DesignFolder, why: string): string[] {
  const keys = ['deviations', 'cautions', 'actions'].filter((key) =>
    new RegExp(`^${key}:`, 'm').test(source.files.get('spec.yaml')!),
  );
  return keys.length ? [`Look at: ${keys.join(', ')}. ${why}`] : [];
}

/** The line that tells an editor where the schema is: that of the designs folder where it has one, else this tool's. */
function withSchema(text: string, folder: string, designs: string): string {
  const own = join(designs, schemaName);
  const schema = existsSync(own) ? own : fileURLToPath(new URL(`../../${schemaName}`, import.meta.url));
  const line = `# yaml-language-server: $schema=${relative(folder, schema).replaceAll('\\', '/')}`;
  return `${line}\n${text.replace(/^# yaml-language-server:[^\r\n]*\r?\n/, '')}`;
}

await runWords(make);
