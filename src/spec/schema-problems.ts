import type { z } from 'zod';
import { nearest } from '../quantity/nearest.ts';
import type { Problem } from './problem.ts';
import type { Path, YamlFile } from './yaml-file.ts';

const examples: Record<string, { code: string; expected: string }> = {
  name: {
    code: 'not-a-name',
    expected: 'a name of letters, digits and underscores that begins with a letter, such as `R_top`',
  },
  date: { code: 'not-a-date', expected: 'a date as year-month-day, such as `2026-03-18`' },
  folder: { code: 'not-a-folder', expected: "the name of another revision's folder, such as `rev-a`" },
  language: { code: 'not-a-language', expected: 'a language code such as `en`' },
};

type Issue = z.core.$ZodIssue;

/** What zod found wrong with the shape of a file, as problems with places. `known` gives the keys a mapping may hold. */
export function schemaProblems(
  yaml: YamlFile,
  issues: readonly Issue[],
  known: (path: Path) => readonly string[],
): Problem[] {
  return issues.flatMap((issue) => fromIssue(yaml, issue, issue.path as Path, known));
}

function fromIssue(yaml: YamlFile, issue: Issue, path: Path, known: (path: Path) => readonly string[]): Problem[] {
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownKey(yaml, [...path, key], key, known(path)));
    case 'invalid_key':
      if (isCutOff(yaml, path)) return [cutOff(yaml, path)];
      return [
        yaml.at(
          path,
          { ...(examples.name as { code: string; expected: string }), found: `\`${String(path.at(-1))}\`` },
          'key',
        ),
      ];
    case 'invalid_union': {
      // The branch that got furthest into the value is the one the writer meant.
      const branches = issue.errors.filter((branch) => branch.length > 0);
      const deepest = branches.toSorted((a, b) => depth(b) - depth(a))[0];
      return deepest
        ? deepest.flatMap((inner) => fromIssue(yaml, inner, [...path, ...(inner.path as Path)], known))
        : [];
    }
    case 'invalid_format': {
      const what = examples[issue.message] ?? { code: 'wrong-form', expected: 'another form' };
      return [yaml.at(path, { ...what, found: `\`${String(valueAt(yaml.data, path))}\`` })];
    }
    case 'invalid_value':
      return [
        yaml.at(path, {
          code: 'not-one-of',
          found: show(valueAt(yaml.data, path)),
          expected: `one of ${issue.values.map((v) => `\`${String(v)}\``).join(', ')}`,
          ...meant(String(valueAt(yaml.data, path)), issue.values.map(String)),
        }),
      ];
    case 'invalid_type': {
      const value = valueAt(yaml.data, path);
      if (value === undefined)
        return [
          yaml.at(
            path,
            {
              code: 'missing-key',
              found: `no \`${String(path.at(-1))}\``,
              expected: `the key \`${String(path.at(-1))}\``,
            },
            'key',
          ),
        ];
      return [
        yaml.at(path, {
          code: 'wrong-kind',
          found: show(value),
          expected: wanted[issue.expected] ?? issue.expected,
          ...unspaced(value, issue.expected),
        }),
      ];
    }
    case 'too_small':
      return [
        yaml.at(path, {
          code: 'missing-value',
          found: 'nothing',
          expected: 'a value',
          hint: 'A comma inside a one-line mapping ends the value: quote the text, or write it on lines of its own.',
        }),
      ];
    case 'too_big':
      return [
        yaml.at(path, {
          code: 'too-long',
          found: show(valueAt(yaml.data, path)),
          expected: `at most ${String(issue.maximum)} characters`,
        }),
      ];
    default:
      return [yaml.at(path, { code: 'wrong-form', found: show(valueAt(yaml.data, path)), expected: issue.message })];
  }
}

/** A key that begins with a digit and holds nothing is what a comma cut off the value before it. */
const isCutOff = (yaml: YamlFile, path: Path): boolean =>
  /^\d/.test(String(path.at(-1))) && ['', null].includes(valueAt(yaml.data, path) as string | null);

function cutOff(yaml: YamlFile, path: Path): Problem {
  const key = String(path.at(-1));
  const siblings = Object.entries(valueAt(yaml.data, path.slice(0, -1)) as Record<string, unknown>);
  const before = siblings[siblings.findIndex(([name]) => name === key) - 1];
  const whole = typeof before?.[1] === 'string' && /\d$/.test(before[1]) ? before[1] : undefined;
  return yaml.at(
    path,
    {
      code: 'decimal-comma',
      found: `\`${key}\` behind a comma, which ends the value in a one-line mapping`,
      expected: 'a point before the decimals, or quotes around a text that holds a comma',
      ...(whole === undefined ? {} : { hint: `Write \`${before![0]}: ${whole}.${key}\`.` }),
    },
    'key',
  );
}

/** `R_top:100 kohm` is a text to YAML, not a key with a value. */
function unspaced(value: unknown, expected: string): { hint?: string } {
  const match = typeof value === 'string' && expected !== 'string' ? /^([^\s:]+):(\S.*)$/.exec(value) : null;
  return match ? { hint: `A colon needs a space behind it: \`${match[1]}: ${match[2]}\`.` } : {};
}

const depth = (issues: readonly Issue[]): number =>
  Math.max(...issues.map((issue) => issue.path.length + (issue.code === 'unrecognized_keys' ? 1 : 0)));

const wanted: Record<string, string> = {
  string: 'text',
  object: 'a mapping of keys to values',
  record: 'a mapping of keys to values',
  array: 'a list',
};

export function unknownKey(yaml: YamlFile, path: Path, key: string, known: readonly string[]): Problem {
  const value = valueAt(yaml.data, path);
  const comma =
    value === '' || value === null
      ? 'A comma inside a one-line mapping ends the value: quote the text, or write it on lines of its own.'
      : undefined;
  const [near] = nearest(key, known);
  const hint = near ? `Did you mean \`${near}\`?` : comma;
  return yaml.at(
    path,
    {
      code: 'unknown-key',
      found: `the key \`${key}\``,
      expected: `one of ${known.map((name) => `\`${name}\``).join(', ')}`,
      ...(hint ? { hint } : {}),
    },
    'key',
  );
}

export const meant = (typed: string, known: Iterable<string>): { hint?: string } => {
  const [near] = nearest(typed, known);
  return near ? { hint: `Did you mean \`${near}\`?` } : {};
};

export function valueAt(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) => (isRecord(value) && Object.hasOwn(value, step) ? value[step] : undefined),
    data,
  );
}

const isRecord = (value: unknown): value is Record<string | number, unknown> =>
  typeof value === 'object' && value !== null;

function show(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (isRecord(value)) return 'a mapping';
  const text = String(value ?? '');
  return text === '' ? 'nothing' : `\`${text.length > 60 ? `${text.slice(0, 60)}…` : text}\``;
}
