import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { advanced, renewed } from '../../src/commands/next-revision.ts';
import { runCommand } from './run-command.ts';

const root = mkdtempSync(join(tmpdir(), 'copperplate-new-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));
const empty = () => mkdtempSync(join(root, 'designs-'));
const make = (designs: string, ...words: string[]) => runCommand('new', ['--designs', designs, ...words]);
const specOf = (designs: string, name: string) => readFileSync(join(designs, name, 'spec.yaml'), 'utf8');

test('a new board builds as it stands', async () => {
  const designs = empty();
  expect(await make(designs, 'harbour-winch')).toMatchObject({
    status: 0,
    out: expect.stringContaining('Next: npm run check -- harbour-winch/rev-a'),
  });
  const text = specOf(designs, 'harbour-winch/rev-a');
  expect(text).toMatch(/^# yaml-language-server: \$schema=.*spec\.schema\.json\n/);
  expect(text).toContain('board: Harbour winch\n');
  expect(text).toMatch(/^issued: \d{4}-\d\d-\d\d /m);
  const check = await runCommand('check', ['--designs', designs, '--trials', '200']);
  expect(check.status).toBe(0);
});

test('the next revision supersedes, is a draft, and leaves notes and readings behind', async () => {
  const designs = empty();
  await make(designs, 'winch');
  const folder = join(designs, 'winch/rev-a');
  const text = specOf(designs, 'winch/rev-a').replace('status: draft ', 'status: released ');
  writeFileSync(join(folder, 'spec.yaml'), text.replace(/^issued: \S+/m, 'issued: 2020-01-01'));
  for (const name of ['notes.mdx', 'bench.csv', 'parts.csv']) writeFileSync(join(folder, name), 'reference\n');
  const { status, out } = await make(designs, 'winch', '--from', 'rev-a');
  expect(status).toBe(0);
  expect(out).toContain('Left with rev-a, whose record they are: notes.mdx, bench.csv.');
  const next = specOf(designs, 'winch/rev-b');
  expect(next).toMatch(/^revision: B\nsupersedes: rev-a\n/m);
  expect(next).toMatch(/^status: draft +# draft \| for review \| released$/m);
  expect(next).not.toContain('2020-01-01');
  expect(readdirSync(join(designs, 'winch/rev-b')).sort()).toEqual(['parts.csv', 'spec.yaml']);
  // From an old one again: the letter after all that are taken, and it says which one it replaces.
  await make(designs, 'winch', '--from', 'winch/rev-a');
  expect(specOf(designs, 'winch/rev-c')).toMatch(/^revision: C\nsupersedes: rev-a\n/m);
});

test('another board from it starts at A, supersedes nothing and has a title of its own', async () => {
  const designs = empty();
  await make(designs, 'winch');
  await make(designs, 'winch', '--from', 'rev-a');
  expect((await make(designs, 'capstan', '--from', 'winch/rev-b')).status).toBe(0);
  const text = specOf(designs, 'capstan/rev-a');
  expect(text).toContain('board: Capstan\n');
  expect(text).toContain('revision: A\n');
  expect(text).not.toMatch(/^supersedes:/m);
});

describe('what cannot be made is refused with what to write', () => {
  const wrong: Record<string, [string[], RegExp]> = {
    'no name': [[], /found no name; expected `npm run new -- my-board`/],
    'a path': [['../elsewhere'], /found `\.\.\/elsewhere`; .*small letters, digits and hyphens/],
    'two names': [['one', 'two'], /found `one two`/],
    'nothing to copy': [['winch', '--from'], /found --from with nothing behind it/],
    'a design that is not there': [['winch', '--from', 'rev-q'], /found no design `rev-q`/],
  };
  test.each(Object.entries(wrong))('%s', async (_, [words, message]) => {
    const designs = empty();
    const { status, err } = await make(designs, ...words);
    expect(status).toBe(2);
    expect(err).toMatch(message);
    expect(readdirSync(designs)).toEqual([]);
  });
  test('a spec that is there already is left as it is', async () => {
    const designs = empty();
    await make(designs, 'winch');
    writeFileSync(join(designs, 'winch/rev-a/spec.yaml'), 'mine');
    const { status, err } = await make(designs, 'winch');
    expect([status, specOf(designs, 'winch/rev-a')]).toEqual([2, 'mine']);
    expect(err).toContain('npm run new -- winch --from rev-a');
  });
});

test('--list shows every method with a line, by its place', async () => {
  const { status, out } = await runCommand('new', ['--list']);
  expect(status).toBe(0);
  expect(out).toMatch(/^Source: pack, fuse, harness\n( {2}\S.*\n)+\nBus\n/);
  expect(out).toMatch(/^ {2}voltage-divider +Voltage divider into a converter$/m);
});

test('names advance', () => {
  expect(['rev-a', 'B', 'rev-z', 'AZ', '1', '1.9', 'r09', 'prototype', 'rev-a2'].map(advanced)).toEqual([
    'rev-b',
    'C',
    'rev-aa',
    'BA',
    '2',
    '1.10',
    'r10',
    undefined,
    'rev-a3',
  ]);
});

test('a spec with line ends of another system keeps them', () => {
  const text = 'board: X\r\nrevision: "A" # mark\r\nissued: 2020-01-01\r\nstatus: released\r\n';
  expect(renewed(text, { mark: 'B', supersedes: 'rev-a', issued: '2026-05-01' })).toBe(
    'board: X\r\nrevision: B\r\nsupersedes: rev-a # mark\r\nissued: 2026-05-01\r\nstatus: draft\r\n',
  );
});
