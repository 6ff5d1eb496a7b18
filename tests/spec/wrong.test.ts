import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { messagesFor } from './spec-text.ts';

interface Wrong {
  readonly wrong: string;
  readonly spec: string;
  readonly says: string;
}

const folder = new URL('./wrong/', import.meta.url);
const themes = readdirSync(folder).map(
  (file) => [file.replace('.yaml', ''), parse(readFileSync(new URL(file, folder), 'utf8')) as Wrong[]] as const,
);

describe.each(themes)('wrong %s', (_, cases) => {
  test.each(cases.map((one) => [one.wrong, one] as const))('%s', (_, { spec, says }) => {
    expect(messagesFor(spec)).toBe(says.trimEnd());
  });
});

test('there are sixty of them, and no word of a machine among their messages', () => {
  const all = themes.flatMap(([, cases]) => cases);
  expect(all.length).toBeGreaterThanOrEqual(60);
  for (const { says } of all) expect(says).not.toMatch(/undefined|NaN|\[object|null|Expected |Invalid /);
});

test('a value that names itself means the condition of the board', () => {
  expect(
    messagesFor(
      'conditions:\n  f_e: 10 Hz to 400 Hz\ncircuits:\n  a:\n    given: { f_e: f_e }\n    equations:\n      w: { is: 2 * pi * f_e, unit: 1/s, says: Angular speed }\n',
    ),
  ).toBe('');
});
