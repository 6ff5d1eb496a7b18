import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { find } from '../../src/analysis/find.ts';
import { undefinedResults } from '../../src/analysis/undefined-results.ts';
import { modelFor, valuesAt } from '../../src/analysis/values-at.ts';
import type { Section } from '../../src/packet/packet.ts';
import { packetOf } from '../../src/packet/packet-of.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { readDesigns } from '../../src/site/designs.ts';
import { readSpec } from '../../src/spec/read-spec.ts';
import { handbook } from '../handbook.ts';
import { methodNamed } from './work.ts';

const source = { file: 'spec.yaml', board: 'example', revision: 'a' };

/** A board that is one method with its example's values, some of them others. */
function boardOf(method: string, given: Record<string, string>) {
  const spec = {
    board: 'Example',
    document: 'E-1',
    revision: 'A',
    issued: '2026-01-01',
    status: 'draft',
    purpose: 'One method',
    margins: { derating: 'commercial' },
    circuits: { it: { method, given: { ...methodNamed(method).example.given, ...given } } },
  };
  return readSpec(stringify(spec), source, handbook);
}

function findingsOf(method: string, given: Record<string, string>) {
  const { board, problems } = boardOf(method, given);
  if (!board) throw new Error(JSON.stringify(problems));
  return { board, findings: find(board, { seed: 1, trials: 200, digest: 'ab'.repeat(32), tool: 'test' }) };
}

/** The words of a circuit's section. */
function pageOf(method: string, given: Record<string, string>): string {
  const { board, findings } = findingsOf(method, given);
  const sections = packetOf(board, findings).chapters.flatMap((chapter): readonly Section[] => chapter.sections);
  return JSON.stringify(sections.find(({ id }) => id === 'it'));
}

describe('ripple of the bus capacitors', () => {
  const { findings } = findingsOf('dc-link-capacitor', { I_rms: '100 A', M: '0 to 1.15', phi: '0 deg to 60 deg' });
  const { worst } = findings.results['it.I_C']!;

  test('is worst inside the range of the modulation index, at 0.650 of the phase current', () => {
    expect(worst.max).toBeCloseTo(64.9747, 3);
    expect(worst.max_bound - worst.max).toBeLessThan(1e-3);
    expect(worst.proven).toBe(true);
    expect(worst.at_max['it.M']).toBeCloseTo(0.6126, 2);
    expect(worst.at_max['it.phi']).toBeCloseTo(0, 1);
  });

  test('is less at either end of the range', () => {
    for (const M of ['0.1', '1.15'])
      expect(
        findingsOf('dc-link-capacitor', { I_rms: '100 A', M, phi: '0 deg' }).findings.results['it.I_C']!.nominal,
      ).toBeLessThan(64);
  });
});

describe('a conductor beyond the chart', () => {
  const given = { I_rms: '60 A', I_max: '60 A', wid: '25 mm' };

  test('is marked and not extrapolated in silence', () => {
    const { findings } = findingsOf('conductor', given);
    const broken = findings.validity.filter(({ verdict }) => verdict === 'fail').map(({ id }) => id);
    expect(broken).toEqual(['it.chart_current', 'it.chart_width']);
    expect(pageOf('conductor', given)).toContain('Its equations do not hold everywhere:');
  });

  test('within it nothing is marked', () => {
    expect(pageOf('conductor', {})).not.toContain('Its equations do not hold everywhere:');
  });
});

test('50.4 V falls in the next band of the spacing table, and 50 V does not', () => {
  const spacing = (V_pk: string) => findingsOf('spacing', { V_pk, kind: '3' }).findings.results['it.s_ipc']!.nominal;
  expect(spacing('50 V')).toBeCloseTo(0.6, 9);
  expect(spacing('50.4 V')).toBeCloseTo(1.5, 9);
});

test('a pack that is full lies in the next band although its typical voltage does not', () => {
  const { worst, nominal } = findingsOf('spacing', { V_pk: '36 V to 50.4 V typ 44 V', kind: '3' }).findings.results[
    'it.s_ipc'
  ]!;
  expect(nominal).toBeCloseTo(0.6, 9);
  expect([worst.min, worst.max]).toEqual([expect.closeTo(0.6, 9), expect.closeTo(1.5, 9)]);
});

describe.each([
  ['half-bridge', { a_R: '0.006 1/K', theta: '80 K/W' }, 'at a gain of one the loss grows as fast as the heat leaves'],
  ['reverse-polarity-switch', { theta: '80 K/W' }, 'at a gain of one the loss grows as fast as the heat leaves'],
  ['pour', { theta: '30 K/W' }, 'beyond this gain the loop runs away'],
] as const)('%s that runs away', (method, given, reason) => {
  test('is refused with the reason, its temperature finite and marked as a floor', () => {
    const { findings } = findingsOf(method, given);
    expect(findings.results['it.g']!.nominal).toBeGreaterThan(1);
    expect(findings.verdict).toBe('fail');
    expect(findings.validity.find(({ id }) => id === 'it.settles')!.verdict).toBe('fail');
    for (const { nominal } of Object.values(findings.results)) expect(Number.isFinite(nominal)).toBe(true);
    const page = pageOf(method, given);
    expect(page).toContain(reason);
    expect(page).toContain('Its equations do not hold everywhere:');
  });
});

/** For each line of validity of the power path, values outside it. */
const outside: Record<string, Record<string, string>> = {
  'active-inrush.limits': { I_lim: '0.5 A' },
  'active-inrush.times': { t_out: '1 s' },
  'ceramic-overshoot.read': { V_x: '100 V' },
  'fuse.often': { n_pulse: '1000000' },
  'fuse.short': { t_pulse: '200 ms' },
  'harness-wire.apart': { dist: '2 mm' },
  'pre-charge.fills': { I_L: '2 A' },
  'reverse-polarity-switch.settles': { theta: '80 K/W' },
  'reverse-polarity-switch.curve': { k_end: '2.5' },
  'surge-clamp.line': { I_s: '40 A' },
  'wire-gauge.gauges': { awg: '44' },
  'dc-link-capacitor.modulation': { M: '1.3' },
  'dc-link-capacitor.life_rule': { T_a: '110 degC' },
  'ripple-sharing.together': { f: '2 MHz' },
  'six-step-capacitor.duty': { D: '1.2' },
  'avalanche.breakdown': { V_BR: '51 V' },
  'blocked-rotor.time': { t_stall: '3 s' },
  'half-bridge.settles': { a_R: '0.006 1/K', theta: '80 K/W' },
  'half-bridge.curve': { k_end: '2' },
  'half-bridge.dead_time': { t_d: '5 us' },
  'junction-pulse.fits': { t_rep: '5 ms' },
  'bootstrap.low_side': { D_max: '1' },
  'current-loop.slow': { f_c: '5 kHz' },
  'conductor.chart_current': { I_rms: '60 A' },
  'conductor.chart_width': { wid: '25 mm' },
  'conductor.chart_rise': { I_rms: '30 A' },
  'copper-against-fuse.adiabatic': { t_clear: '60 s' },
  'creepage.voltage': { V_w: '200 V' },
  'creepage.degrees': { deg: '4' },
  'creepage.groups': { grp: '5' },
  'pour.skin': { f_r: '10 MHz' },
  'pour.settles': { theta: '30 K/W' },
  'spacing.kinds': { kind: '9' },
  'via-array.chart': { I_rms: '400 A' },
  'burst-time.starts': { dT_0: '60 K' },
  'touch-temperature.contact': { t_c: '0.1 s' },
};

const places = ['source', 'bus', 'stage', 'drive', 'motor', 'copper', 'heat'];
const methods = places.flatMap((place) =>
  readdirSync(new URL(`../../src/handbook/${place}/`, import.meta.url)).map((name) => name.replace(/\.yaml$/, '')),
);

describe('outside its validity a method', () => {
  test('has a line here for each that it states', () => {
    const stated = methods.flatMap((id) => Object.keys(methodNamed(id).valid ?? {}).map((name) => `${id}.${name}`));
    expect(Object.keys(outside).sort()).toEqual(stated.sort());
  });

  test.each(Object.entries(outside))('%s says so and keeps to numbers', (line, given) => {
    const [method, name] = line.split('.') as [string, string];
    const { findings } = findingsOf(method, given);
    const mark = findings.validity.find(({ id }) => id === `it.${name}`)!;
    expect(['fail', 'not assessed'], line).toContain(mark.verdict);
    for (const [id, { nominal, worst }] of Object.entries(findings.results))
      for (const number of [nominal, worst.min, worst.max]) expect(Number.isFinite(number), id).toBe(true);
    expect(JSON.stringify(findings)).not.toMatch(/NaN/);
  });
});

describe('the lift table', () => {
  const [design] = readDesigns(fileURLToPath(new URL('../../designs', import.meta.url)), ['lift-table/rev-a']);
  const { board } = readSpec(design!.files.get('spec.yaml')!, { ...source, board: 'lift-table' }, handbook);

  test('uses every method of the power path', () => {
    const used = new Set(board!.circuits.map(({ method }) => method?.id));
    expect(methods.filter((id) => !used.has(id))).toEqual([]);
  });

  test('has every worst case proven, and no circuit outside its validity', () => {
    const { results, validity, verdict } = find(board!, {
      seed: 1,
      trials: 200,
      digest: 'ab'.repeat(32),
      tool: 'test',
    });
    expect(Object.entries(results).flatMap(([id, { worst }]) => (worst.proven ? [] : [id]))).toEqual([]);
    expect(validity.filter(({ verdict: of }) => of !== 'pass').map(({ id }) => id)).toEqual([]);
    expect(verdict).toBe('marginal');
    expect(results['board.heat']!.worst.max).toBeGreaterThan(3 * results['stage.P_leg']!.worst.max);
  }, 120_000);
});

describe.each(methods)('%s, one value far out at a time', (id) => {
  const method = methodNamed(id);
  const numbers = Object.entries(method.example.given).map(([symbol, text]) => [symbol, parseQuantity(text)] as const);

  test.each([0, 1e-3, 1e3])('times %d gives numbers, or a message that names what divides by zero', (times) => {
    for (const [symbol, { typ, unit }] of numbers) {
      const { board, problems } = boardOf(id, { [symbol]: `${printed(typ, unit) * times} ${unit.text}` });
      if (!board) {
        expect(problems.length, symbol).toBeGreaterThan(0);
        continue;
      }
      if (undefinedResults(board).length) continue;
      const values = valuesAt(board, {});
      for (const { id: result } of modelFor(board).results) {
        const value = values.get(result)!;
        expect(Number.isNaN(value), `${result} with ${symbol} times ${times}`).toBe(false);
      }
    }
  });
});

const printed = (si: number, unit: ReturnType<typeof parseQuantity>['unit']): number => (si - unit.offset) / unit.scale;
