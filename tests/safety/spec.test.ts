import { describe, expect, test } from 'vitest';
import { find } from '../../src/analysis/find.ts';
import { same } from '../../src/quantity/dimension.ts';
import { parseUnit } from '../../src/quantity/units.ts';
import { cautionsOf } from '../../src/safety/cautions-of.ts';
import { safetyProblems } from '../../src/safety/safety-problems.ts';
import { showProblems } from '../../src/spec/problem.ts';
import { handbook } from '../handbook.ts';
import { boardFrom, messagesFor, spec } from '../spec/spec-text.ts';
import { data } from './board-with.ts';

const problemsOf = (rest: string): string => showProblems(safetyProblems(spec(rest), 'spec.yaml', data));

describe('what is wrong in a spec is pointed at', () => {
  test('nothing wrong, no problem', () => {
    expect(
      problemsOf(
        'safety: { has_pack: yes, t_hold: 60 s, E_slope: infinite, T_pack: unknown }\ncautions: { S05: { level: warning } }\n',
      ),
    ).toBe('');
  });
  test('a fact that nobody knows', () => {
    expect(problemsOf('safety:\n  has_pak: yes\n')).toBe(`spec.yaml:8:3  unknown-fact
  safety.has_pak: found \`has_pak\`; expected a fact or a hazard quantity of the safety tables.
  7 | safety:
  8 |   has_pak: yes
    |   ^^^^^^^
  Did you mean \`has_pack\`?`);
  });
  test('a fact that is neither yes nor no', () => {
    expect(problemsOf('safety:\n  wet: maybe\n')).toContain(
      '8:8  not-one-of\n  safety.wet: found `maybe`; expected `yes`, `no` or `unknown`.',
    );
  });
  test('a quantity of another kind', () => {
    expect(problemsOf('safety:\n  t_hold: 60 V\n')).toContain(
      'found `60 V`, a quantity of voltage; expected a quantity of time, `infinite` or `unknown`.',
    );
  });
  test('a quantity that cannot be read, drifts, or is negative', () => {
    expect(problemsOf('safety:\n  t_hold: 60 sec\n')).toContain('unknown-unit');
    expect(problemsOf('safety:\n  I_q: 5 mA ±100 ppm/K\n')).toContain(
      'found `5 mA ±100 ppm/K`, which drifts or ages; expected the range that it comes to, such as `9 A to 11 A`.',
    );
    expect(problemsOf('safety:\n  I_q: -5 mA\n')).toContain(
      'found `-5 mA`, which reaches below zero; expected the size of the quantity.',
    );
  });
  test('a temperature below zero on its scale is read', () => {
    expect(problemsOf('safety:\n  T_chg_min: -10 degC\n')).toBe('');
  });
  test('a decision about a caution that does not exist', () => {
    expect(problemsOf('cautions:\n  S99: { level: warning }\n')).toContain(
      '8:3  unknown-caution\n  cautions.S99: found the caution `S99`; expected a caution of the safety tables, such as `S05`.',
    );
  });
  test('a decision that nobody signed', () => {
    expect(problemsOf('cautions:\n  S05: { dismissed: yes, reason: Nobody opens it. }\n')).toContain(
      'unsigned-decision\n  cautions.S05: found a decision about S05 that does not stand; expected another: to dismiss it takes `reason`, `role` and `date`.',
    );
    expect(problemsOf('cautions:\n  S38: { level: caution }\n')).toContain(
      'to lower it from danger takes `reason`, `role` and `date`.',
    );
  });
  test('a hazard that is no quantity of the tables, or of another kind', () => {
    const circuit = (hazard: string) =>
      `circuits:\n  bus:\n    given: { C: 1 mF }\n    equations:\n      E: { is: "C * 1 [V^2]", unit: J, says: Energy, hazard: ${hazard} }\n`;
    expect(problemsOf(circuit('E_cap'))).toBe('');
    expect(problemsOf(circuit('E_cpa'))).toContain(
      'found the hazard quantity `E_cpa`; expected one of the safety tables, such as `E_cap`.',
    );
    expect(problemsOf(circuit('E_cpa'))).toContain('Did you mean `E_cap`?');
    expect(problemsOf(circuit('V_max'))).toContain('expected a quantity of voltage.');
  });
  test("the shape of a decision is the spec reader's business", () => {
    expect(messagesFor('cautions:\n  S05: { level: grave }\n')).toContain(
      'found `grave`; expected one of `danger`, `warning`, `caution`, `notice`.',
    );
    expect(messagesFor('cautions:\n  S05: { dissmissed: yes }\n')).toContain('Did you mean `dismissed`?');
    expect(messagesFor('cautions:\n  S05: { dismissed: yes, date: 2 April }\n')).toContain('not-a-date');
    expect(boardFrom('cautions:\n  S05: { level: warning, reason: Held by hand. }\n').cautions).toEqual([
      { id: 'S05', level: 'warning', reason: 'Held by hand.', dismissed: false },
    ]);
  });
});

describe('the handbook', () => {
  const tags = new Map([...data.quantities.values()].map((quantity) => [quantity.tag, quantity.unit]));
  const tagged = [...handbook.methods.values()].flatMap(({ id, symbols, equations = {} }) =>
    [...Object.entries(symbols), ...Object.entries(equations)].flatMap(([symbol, { hazard, unit }]) =>
      hazard === undefined ? [] : [{ id, symbol, hazard, unit }],
    ),
  );
  test('has methods that feed the cautions', () => expect(tagged.length).toBeGreaterThan(40));
  test.each(tagged)('$id.$symbol feeds $hazard, which is known and of its kind', ({ hazard, unit }) => {
    expect([...tags.keys()]).toContain(hazard);
    expect(same(parseUnit(unit).dimension, tags.get(hazard)!.dimension)).toBe(true);
  });
});

describe('a whole board, from its text', () => {
  const text = `conditions: { T_amb: -5 degC to 40 degC }
circuits:
  pack:
    method: battery-pack
    given: { N_s: 14, V_cell: 3.0 V to 4.2 V typ 3.6 V, R_cell: 20 mohm ±20 %, I_max: 30 A, I_regen: 10 A, Q_cell: 5 Ah }
  bank:
    given: { C: 3000 uF ±20 % }
    equations:
      E_bus: { is: C * pack.V_bat^2 / 2, unit: J, says: Energy in the bus capacitors, hazard: E_cap }
  bleed:
    method: bleeder
    given: { C: bank.C, V_max: pack.V_bat, R_bl: 4.7 kohm ±5 %, P_r: 2 W, V_r: 200 V }
margins: { derating: commercial }
safety: { has_motor: no, regen: yes, has_fuse: no, wet: no }
`;
  const board = boardFrom(text);
  const { shown, considered } = cautionsOf(board, find(board, { seed: 1, trials: 10, digest: '', tool: 'test' }), data);
  const caution = (id: string) => shown.find((one) => one.id === id)!;
  test('has no problem', () => expect(problemsOf(text)).toBe(''));
  test('short circuit: 14 × 4.2 V over 14 × 16 mΩ × 0.5 at the cells, matched load', () => {
    // 58.8 V / 112 mΩ = 525 A; 58.8 × 525 / 4 = 7.72 kW.
    expect(caution('S38').text).toMatch(/^Into a short circuit flows 525\u00a0A at 64\.7\u00a0V, /);
    expect(caution('S01').reason).toBe('a pack is joined; P_sc = 7.72\u00a0kW > 1000\u00a0W');
  });
  test('energy: 3600 µF at 58.8 V', () => {
    // 6.2234 J
    expect(caution('S05')).toMatchObject({ certain: true, circuits: ['bank', 'bleed'] });
    expect(caution('S05').text).toMatch(/^After unplugging the bus still holds 6\.23\u00a0J\./);
  });
  test('waiting time: at least 4.935 kΩ × 3.6 mF × ln(58.8 / 5)', () => {
    // 43.79 s at 58.8 V.
    expect(caution('S05').precaution).toMatch(/^Wait 43\.8\u00a0s and measure below 5 V/);
  });
  test('braking in the cold and into a full pack', () => {
    expect(caution('S22').reason).toBe(
      'a pack is joined; current can flow back into the pack; T_amb_min = \u22125.00\u00a0°C < T_chg_min = 0\u00a0°C',
    );
    expect(caution('S21').reason).toMatch(/V_brake = 62\.2\u00a0V > V_chg_max = 58\.8\u00a0V/);
  });
  test('no motor, no moving parts', () => {
    expect(considered.find(({ id }) => id === 'S13')).toMatchObject({
      outcome: 'not shown',
      reason: 'no motor is connected',
    });
  });
});
