import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import type { Findings } from '../../src/analysis/findings.ts';
import { runCommand } from './run-command.ts';

const root = mkdtempSync(join(tmpdir(), 'copperplate-check-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const head =
  'board: Dinghy thruster\ndocument: DT-3\nrevision: A\nissued: 2026-04-01\nstatus: draft\npurpose: Pushes a dinghy.\n';
const divider = (changes = '') =>
  `${head}circuits:\n  sense:\n    method: voltage-divider\n    given:\n      V_in: 10 V to 16.8 V typ 14.8 V\n      R_top: 100 kohm ±1 %\n      R_bot: 18 kohm ±1 %\n      C_f: 10 nF ±10 %\n      V_fs: 3.234 / 3.300 / 3.366 V\n${changes}`;

/** A designs folder with one revision. */
function designs(spec: string): string {
  const folder = mkdtempSync(join(root, 'designs-'));
  mkdirSync(join(folder, 'dinghy/rev-a'), { recursive: true });
  writeFileSync(join(folder, 'dinghy/rev-a/spec.yaml'), spec);
  return folder;
}
const check = (spec: string, ...words: string[]) =>
  runCommand('check', ['--designs', designs(spec), '--trials', '500', ...words]);

describe('exit status', () => {
  test('0 where every check holds, and a ranked table', async () => {
    const { status, out } = await check(divider());
    expect(status).toBe(0);
    expect(out).toMatch(/^dinghy\/rev-a\s+(pass|marginal)/);
    expect(out).toMatch(/sense\.full_scale\s+\d+\.\d\s%/);
  });
  test('1 where a check fails', async () => {
    const { status, out } = await check(divider().replace('18 kohm', '28 kohm'));
    expect(status).toBe(1);
    expect(out).toMatch(/sense\.full_scale\s+−\d+\.\d\s%\s+!\s+FAIL/);
  });
  const wrong: Record<string, [string, RegExp]> = {
    'a wrong unit': [divider().replace('100 kohm', '100 kV'), /spec\.yaml:12:14 {2}wrong-unit/],
    'an unknown symbol': [
      divider('    equations:\n      x: { is: V_inn * 2, unit: V, says: Twice }\n'),
      /spec\.yaml:17:16 {2}unknown-name[\s\S]*Did you mean/,
    ],
    'a loop': [
      `${head}circuits:\n  a:\n    given: { x: b.y, y: x }\n  b:\n    given: { y: a.y }\n`,
      /loop[\s\S]*needs/,
    ],
    'a key twice': [divider().replace('C_f: 10 nF', 'R_bot: 10 kohm\n      C_f: 10 nF'), /yaml-duplicate-key/],
    'a missing value': [divider().replace('      V_fs: 3.234 / 3.300 / 3.366 V\n', ''), /missing-value[\s\S]*V_fs/],
    'a tab': [divider().replace('    given', '\tgiven'), /yaml-tab/],
    'a divisor that can be zero': [
      divider('    equations:\n      x: { is: 1 V^2 / (V_in - 12 V), unit: V, says: Pole }\n'),
      /zero-divisor[\s\S]*sense\.V_in/,
    ],
    'an empty file': ['', /spec\.yaml:1:1/],
    'no YAML at all': ['::: {', /spec\.yaml:1:\d/],
  };
  test.each(Object.entries(wrong))('2 for %s, with its place and no stack trace', async (_, [spec, message]) => {
    const { status, out, err } = await check(spec);
    expect(status).toBe(2);
    expect(err).toMatch(message);
    expect(err).not.toMatch(/\n\s+at .*:\d+:\d+/);
    expect(out).toBe('');
  });
  test('2 for a name that is not there, and for an option that is none', async () => {
    expect(await check(divider(), 'ship')).toMatchObject({
      status: 2,
      err: expect.stringContaining('found no design `ship`'),
    });
    expect(await check(divider(), '--trails', '5')).toMatchObject({
      status: 2,
      err: expect.stringContaining('--trials'),
    });
    expect(await check(divider(), '--trials', 'many')).toMatchObject({
      status: 2,
      err: expect.stringContaining('a whole number'),
    });
  });
});

test('--json prints results.json with every key of the format', async () => {
  const { status, out } = await check(divider(), '--json', 'dinghy/rev-a');
  expect(status).toBe(0);
  const results = JSON.parse(out) as Findings;
  expect(results).toMatchObject({
    format: 'copperplate-results/1',
    board: 'dinghy',
    revision: 'rev-a',
    document: 'DT-3',
    tool: '1.0.0',
    seed: 1,
    trials: 500,
    inputs_sha256: expect.stringMatching(/^[0-9a-f]{64}$/),
    results: {
      'sense.V_out': {
        unit: 'V',
        nominal: expect.closeTo((14.8 * 18) / 118, 12),
        worst: {
          min: expect.any(Number),
          max: expect.any(Number),
          min_bound: expect.any(Number),
          max_bound: expect.any(Number),
          at_min: { 'sense.V_in': 10 },
          at_max: { 'sense.V_in': 16.8 },
        },
        rss: { min: expect.any(Number), max: expect.any(Number) },
        spread: { at: { 'sense.V_in': 16.8 }, mean: expect.any(Number), sd: expect.any(Number) },
      },
    },
    yield: { estimate: 1, low: expect.any(Number), high: 1 },
  });
  expect(Object.keys(results.results['sense.V_out']!.spread!.quantiles)).toEqual([
    '0.00135',
    '0.025',
    '0.5',
    '0.975',
    '0.99865',
  ]);
  const checked = results.checks.find(({ id }) => id === 'sense.full_scale');
  expect(checked).toMatchObject({
    statement: 'V_out <= V_fs',
    unit: 'V',
    verdict: 'pass',
    target: 0,
    worst_slack: expect.any(Number),
    margin: expect.any(Number),
    fail_fraction: { estimate: 0, low: 0, high: expect.closeTo(1 - 0.05 ** (1 / 500), 9) },
  });
  expect(results.cautions[0]).toMatchObject({
    id: expect.any(String),
    because: expect.any(Object),
    unit: expect.any(String),
  });
  expect(results.assumptions).toContainEqual(
    expect.objectContaining({ symbol: 'sense.N_adc', value: expect.any(String), basis: 'usual value' }),
  );
});

test('the numbers do not depend on the order in which circuits stand', async () => {
  const one = '  a:\n    given: { R: 1 kohm ±1 % }\n    equations: { G: { is: 1 V / R, unit: A, says: Current } }\n';
  const two = '  b:\n    given: { R: 2 kohm ±1 % }\n    equations: { G: { is: 1 V / R, unit: A, says: Current } }\n';
  const [first, second] = await Promise.all(
    [one + two, two + one].map(
      async (circuits) => JSON.parse((await check(`${head}circuits:\n${circuits}`, '--json')).out) as Findings,
    ),
  );
  expect(second!.results['a.G']).toEqual(first!.results['a.G']);
  expect(second!.results['b.G']).toEqual(first!.results['b.G']);
});

describe('packet', () => {
  test('a spec that is wrong leaves an existing output as it was', async () => {
    const out = mkdtempSync(join(root, 'out-'));
    writeFileSync(join(out, '.copperplate'), 'kept');
    writeFileSync(join(out, 'index.html'), 'the last good packet');
    const { status, err } = await runCommand('packet', [
      '--designs',
      designs(divider().replace('100 kohm', '100 kV')),
      '--out',
      out,
    ]);
    expect(status).toBe(2);
    expect(err).toMatch(/wrong-unit/);
    expect(readdirSync(out).sort()).toEqual(['.copperplate', 'index.html']);
    expect(readFileSync(join(out, 'index.html'), 'utf8')).toBe('the last good packet');
  });
});
