import { isMap, isScalar, isSeq, LineCounter, type Node, parseDocument, type YAMLError } from 'yaml';
import type { TextProblem } from '../quantity/text-problem.ts';
import type { Problem } from './problem.ts';

export type Path = readonly (string | number)[];

/** A YAML file that was read: its plain data (every scalar a string, as typed) and the way back from data to place. */
export interface YamlFile {
  readonly file: string;
  readonly data: unknown;
  readonly problems: readonly Problem[];
  /** A problem with the value (or the key) at a path; a missing key points at its nearest parent that exists. */
  at(path: Path, what: Omit<TextProblem, 'start' | 'end'>, on?: 'key' | 'value'): Problem;
  /** A problem inside the text of the scalar at a path. */
  within(path: Path, problem: TextProblem): Problem;
}

const largest = 2_000_000;

/**
 * Reads YAML 1.2 with every scalar as text, so that `1.10` stays `1.10`. All problems of syntax are returned, none thrown:
 * tabs, duplicate keys, broken quotes, and files beyond 2 MB or with expanding aliases.
 */
export function readYaml(text: string, file: string): YamlFile {
  const lines = new LineCounter();
  if (text.length > largest) return tooLarge(text, file);
  const document = parseDocument(text, {
    schema: 'failsafe',
    lineCounter: lines,
    prettyErrors: false,
    stringKeys: true,
  });
  const place = placer(text, file, lines);
  const problems = leading([...document.errors, ...document.warnings]).map((error) =>
    syntaxProblem(error, text, place),
  );
  let data: unknown;
  try {
    data = problems.length ? undefined : document.toJS({ maxAliasCount: 50 });
  } catch (error) {
    problems.push(
      place(0, 1, [], {
        code: 'yaml-alias',
        found: `aliases that cannot be followed (${(error as Error).message})`,
        expected: 'each value written out, or few aliases',
      }),
    );
  }
  const root = document.contents as Node | null;
  return {
    file,
    data,
    problems,
    at: (path, what, on = 'value') => place(...spanOf(root, path, on, text.length), path, what),
    within: (path, problem) => {
      const [start, end] = spanOf(root, path, 'value', text.length);
      const inside = offsetInside(text, start, end, problem);
      return place(inside.start, inside.end, path, problem);
    },
  };
}

/** Errors that leave the rest of the file readable; any other makes the reader stumble over what follows it. */
const harmless = new Set<string>(['DUPLICATE_KEY', 'TAB_AS_INDENT']);

function leading(errors: readonly YAMLError[]): YAMLError[] {
  const sorted = errors.toSorted((a, b) => a.pos[0] - b.pos[0]);
  const stumble = sorted.findIndex(({ code }) => !harmless.has(code));
  return stumble < 0 ? sorted : sorted.slice(0, stumble + 1);
}

type Placer = (start: number, end: number, path: Path, what: Omit<TextProblem, 'start' | 'end'>) => Problem;

function placer(text: string, file: string, lines: LineCounter): Placer {
  const rows = text.split('\n');
  return (start, end, path, { code, found, expected, hint }) => {
    const { line, col } = lines.linePos(start);
    const row = (rows[line - 1] ?? '').replace(/\r$/, '');
    const before = line > 1 ? rows[line - 2]!.replace(/\r$/, '') : undefined;
    const length = Math.max(1, Math.min(end - start, row.length - col + 1));
    return {
      code,
      file,
      line,
      column: col,
      key: path.join('.'),
      found,
      expected,
      ...(hint === undefined ? {} : { hint }),
      excerpt: { ...(before === undefined ? {} : { before }), text: row, length },
    };
  };
}

/** Where the value (or key) at a path stands; where the path ends early, the last part that exists. */
function spanOf(root: Node | null, path: Path, on: 'key' | 'value', length: number): [number, number] {
  let node: Node | null = root;
  let span: [number, number] = [0, Math.min(1, length)];
  for (const [depth, step] of path.entries()) {
    const last = depth === path.length - 1;
    if (isMap(node)) {
      const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value) === String(step));
      if (!pair) return span;
      const key = rangeOf(pair.key as Node);
      span = key;
      node = (pair.value as Node | null) ?? null;
      if (!last || on === 'value') span = isScalar(node) && node.source !== '' ? rangeOf(node) : key;
    } else if (isSeq(node)) {
      const item = node.items[Number(step)] as Node | undefined;
      if (!item) return span;
      node = item;
      span = rangeOf(item);
    } else return span;
  }
  return span;
}

const rangeOf = (node: Node): [number, number] => (node.range ? [node.range[0], node.range[1]] : [0, 1]);

/** Offsets into a scalar's text are offsets into the file, but for the quote before it; folded text keeps its start. */
function offsetInside(text: string, start: number, end: number, problem: TextProblem): { start: number; end: number } {
  const raw = text.slice(start, end);
  if (/^[>|]/.test(raw)) return { start, end: start + 1 };
  const quote = /^['"]/.test(raw) ? 1 : 0;
  const from = Math.min(start + quote + problem.start, end);
  return { start: from, end: Math.max(from + 1, Math.min(start + quote + problem.end, end)) };
}

const explained: Partial<Record<YAMLError['code'], { code: string; found?: string; expected: string; hint?: string }>> =
  {
    TAB_AS_INDENT: {
      code: 'yaml-tab',
      expected: 'spaces for indentation',
      hint: 'Replace the tab by two spaces for each level.',
    },
    DUPLICATE_KEY: {
      code: 'yaml-duplicate-key',
      expected: 'each key once',
      hint: 'Remove one of the two, or give it another name.',
    },
    BAD_INDENT: { code: 'yaml-indent', expected: 'lines of one mapping to start in one column' },
    MISSING_CHAR: { code: 'yaml-missing-character', expected: 'the closing quote, bracket or colon' },
    BLOCK_IN_FLOW: {
      code: 'yaml-colon',
      found: 'a colon and a space inside a text',
      expected: 'quotes around a text that holds them, such as `says: "note: this"`',
    },
    BLOCK_AS_IMPLICIT_KEY: {
      code: 'yaml-colon',
      found: 'a second colon in one line',
      expected: 'one `key: value` a line, or quotes around a text that holds a colon and a space',
    },
    MULTILINE_IMPLICIT_KEY: { code: 'yaml-key', expected: '`key: value` on one line' },
  };

function syntaxProblem(error: YAMLError, text: string, place: Placer): Problem {
  const [start, end] = error.pos;
  const known = explained[error.code];
  // The library names a tab only where it indents; anywhere else it is an unexplained surprise.
  const tab = text.slice(Math.max(0, text.lastIndexOf('\n', start - 1)), end).match(/^\s*\t/)
    ? explained.TAB_AS_INDENT
    : undefined;
  const { code, expected, hint } = tab ??
    known ?? { code: 'yaml-syntax', expected: 'YAML that can be read', hint: undefined };
  const found = tab
    ? 'a tab'
    : error.code === 'DUPLICATE_KEY'
      ? `the key \`${wordAt(text, start)}\` a second time`
      : (known?.found ?? inWords(error.message));
  return place(start, end, [], { code, found, expected, ...(hint ? { hint } : {}) });
}

/** What the library says, as the middle of a sentence: `a missing closing "` instead of `Missing closing "quote`. */
const inWords = (message: string): string =>
  message
    .replace(/\.$/, '')
    .replace(/^Missing closing (["'])quote$/, 'a $1 that is never closed')
    .replace(/^[A-Z](?=[a-z])/, (first) => first.toLowerCase());

const wordAt = (text: string, start: number): string => /^[^\s:]*/.exec(text.slice(start, start + 80))![0];

function tooLarge(text: string, file: string): YamlFile {
  const problem: Problem = {
    code: 'file-too-large',
    file,
    line: 1,
    column: 1,
    key: '',
    found: `${(text.length / 1e6).toFixed(1)} MB`,
    expected: `a spec of at most ${largest / 1e6} MB`,
    hint: 'Split the board, or move data to its own file.',
    excerpt: { text: text.slice(0, 60).split('\n')[0]!, length: 1 },
  };
  return { file, data: undefined, problems: [problem], at: () => problem, within: () => problem };
}
