import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { HandbookError, loadHandbook } from '../../src/site/handbook-files.ts';
import { runCommand } from './run-command.ts';

const root = mkdtempSync(join(tmpdir(), 'copperplate-own-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const brake = `title: Holding brake of a winch
sizes: Coil of a brake that lets go with power on.
holds when: The coil is warm and its supply steady.
symbols:
  V_c: { says: Voltage across the coil, unit: V }
  R_c: { says: Resistance of the coil, unit: ohm, part: inductor }
  I_go: { says: Current that lets the brake go, unit: A }
equations:
  I_c: { is: V_c / R_c, unit: A, says: Current of the coil, source: ohm }
checks:
  go: { holds: I_c >= I_go, because: a brake that drags burns }
sources: { ohm: Ohm's law }
example:
  given: { V_c: 24 V, R_c: 48 ohm, I_go: 0.3 A }
  gives: { I_c: 0.5 A }
`;

/** A designs folder with one board that uses a method of its own. */
function designs(method = brake, name = 'winch/holding-brake.yaml'): string {
  const folder = mkdtempSync(join(root, 'designs-'));
  mkdirSync(join(folder, 'methods/winch'), { recursive: true });
  writeFileSync(join(folder, 'methods', name), method);
  mkdirSync(join(folder, 'winch/rev-a'), { recursive: true });
  writeFileSync(
    join(folder, 'winch/rev-a/spec.yaml'),
    'board: Winch\ndocument: W-1\nrevision: A\nissued: 2026-04-01\nstatus: draft\npurpose: Lifts.\ncircuits:\n  brake:\n    method: holding-brake\n    given: { V_c: 20 V to 28 V, R_c: 48 ohm ±5 %, I_go: 0.3 A }\n',
  );
  return folder;
}

const problemsOf = (folder: string): string => {
  try {
    loadHandbook(folder);
    return '';
  } catch (error) {
    if (!(error instanceof HandbookError)) throw error;
    return error.message;
  }
};

test('a board uses a method that stands beside it, and it is listed and shown with the rest', async () => {
  const folder = designs();
  const checked = await runCommand('check', ['--designs', folder, '--trials', '200']);
  expect(checked).toMatchObject({ status: 0, out: expect.stringContaining('brake.go') });
  const listed = await runCommand('new', ['--list', '--designs', folder]);
  expect(listed.out).toMatch(/^Winch\n {2}holding-brake +Holding brake of a winch$/m);
  expect((await runCommand('method', ['holding-brake', '--designs', folder])).out).toContain('I_c = V_c / R_c');
});

test('an own method is held to the rules of the handbook, each fault with its place', () => {
  expect(problemsOf(designs(brake.replace(', source: ohm', '')))).toMatch(/holding-brake\.yaml:9:3 {2}missing-key/);
  expect(problemsOf(designs(brake.replace(', because: a brake that drags burns', '')))).toMatch(/11:3 {2}missing-key/);
  expect(problemsOf(designs(brake.replace('V_c / R_c', 'V_c * R_c')))).toMatch(/9:14 {2}units-disagree/);
  expect(problemsOf(designs(brake.replace('I_c: 0.5 A }\n', 'I_c: 0.6 A }\n')))).toMatch(
    /15:17 {2}wrong-example\n.*found `0\.6 A`; expected what the equations give, `0\.5 A`\./,
  );
});

test('a name that the handbook has already is refused', () => {
  expect(problemsOf(designs(brake, 'voltage-divider.yaml'))).toMatch(
    /voltage-divider\.yaml:1:8 {2}method-twice\n.*which the handbook has already/,
  );
});

test('a link that leads out of the folder is not followed', () => {
  const folder = designs();
  const outside = join(root, 'outside.yaml');
  writeFileSync(outside, 'not a method');
  symlinkSync(outside, join(folder, 'methods/outside.yaml'));
  expect(problemsOf(folder)).toBe('');
});

test('--fail-under demands a margin', async () => {
  const folder = designs();
  const status = async (...words: string[]) =>
    (await runCommand('check', ['--designs', folder, '--trials', '200', ...words])).status;
  expect(await status('--fail-under', '20%')).toBe(0);
  expect(await status('--fail-under', '40 %')).toBe(1);
  expect(await status('--fail-under=0.4')).toBe(1);
  expect(await status('--fail-under', 'much')).toBe(2);
});
