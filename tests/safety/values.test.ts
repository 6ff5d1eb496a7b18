import { describe, expect, test } from 'vitest';
import { parseExpression } from '../../src/expression/parse.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { parseUnit } from '../../src/quantity/units.ts';
import { cautionsOf } from '../../src/safety/cautions-of.ts';
import { feedingOf } from '../../src/safety/fed.ts';
import { figureOf, truthfulFigure } from '../../src/safety/figures.ts';
import { flagsOf } from '../../src/safety/flags-of.ts';
import { solve } from '../../src/safety/solve.ts';
import { ANYTHING, type Truth, truthOf } from '../../src/safety/truths.ts';
import type { Board, Circuit, Input, InputValue } from '../../src/spec/board.ts';
import { boardWith, cautionsWith, circuitOf, data, empty, type Known, resultFinding } from './board-with.ts';

const point = (x: number) => ({ lo: x, hi: x, certain: true });
const valuesOf = (board: Board, findings: Parameters<typeof feedingOf>[1]) => {
  const feeding = feedingOf(board, findings, data);
  return solve(data, feeding, flagsOf(board, feeding, data)).values;
};
const oneOf = (symbol: string, known: Known) => {
  const { board, findings } = boardWith(known);
  const { state, range, missing } = valuesOf(board, findings).get(symbol)!;
  return { state, lo: range.lo, hi: range.hi, missing };
};

describe('three values', () => {
  const known: Record<string, ReturnType<typeof point>> = { yes: point(1), no: point(0), open: ANYTHING };
  // Kleene: what fails decides an `and`, what holds decides an `or`, whatever the other is.
  test.each<[string, Truth]>([
    ['and(yes > 0.5, yes > 0.5)', 'yes'],
    ['and(yes > 0.5, no > 0.5)', 'no'],
    ['and(yes > 0.5, open > 0.5)', 'unknown'],
    ['and(open > 0.5, no > 0.5)', 'no'],
    ['or(no > 0.5, no > 0.5)', 'no'],
    ['or(yes > 0.5, open > 0.5)', 'yes'],
    ['or(no > 0.5, open > 0.5)', 'unknown'],
    ['not(open > 0.5)', 'unknown'],
    ['not(no > 0.5)', 'yes'],
    ['not(yes > 0.5)', 'no'],
    ['and(yes > 0.5, yes > 0.5, open > 0.5, no > 0.5)', 'no'],
    ['or(no > 0.5, open > 0.5, yes > 0.5)', 'yes'],
    ['open >= 0', 'yes'],
    ['open < 0', 'no'],
    // Nothing times anything is nothing.
    ['open * no > 0', 'no'],
    ['open * yes > 0', 'unknown'],
  ])('%s is %s', (text, truth) => {
    expect(truthOf(parseExpression(text), (name) => known[name]!)).toBe(truth);
  });
  test('infinity is a number', () => {
    expect(truthOf(parseExpression('t > 5'), () => point(Infinity))).toBe('yes');
    expect(truthOf(parseExpression('t < 5'), () => point(Infinity))).toBe('no');
  });
  test('rounding of the last bit decides nothing', () => {
    expect(truthOf(parseExpression('V > 60'), () => point(60.00000000000001))).toBe('no');
    expect(truthOf(parseExpression('V > 60'), () => point(60.000001))).toBe('yes');
  });
});

describe('which end counts', () => {
  test('the most where danger lies up, the least where it lies down', () => {
    expect(oneOf('I_bus', { I_bus: '10 A to 45 A' })).toMatchObject({ state: 'known', lo: 45 });
    expect(oneOf('V_bus_rating', { V_bus_rating: '80 V to 100 V' })).toMatchObject({ state: 'known', lo: 80 });
  });
  test('both ends of one range: capacitance at its most for energy, at its least for the rise', () => {
    const known = { C_bus: '1 mF to 2 mF', V_touch: '10 V' };
    expect(oneOf('C_bus', known).lo).toBe(2e-3);
    expect(oneOf('C_bus_low', known).lo).toBe(1e-3);
    expect(oneOf('E_cap', known).lo).toBeCloseTo(0.1, 12);
  });
  test('the lowest ambient comes from the conditions', () => {
    expect(oneOf('T_amb_min', { T_amb: '-20 degC to 40 degC' }).lo).toBeCloseTo(253.15, 9);
  });
});

describe('equations of the tables, by hand', () => {
  test.each<[string, Known, number]>([
    ['P_sc', { V_max: '50 V', I_sc: '1 kA' }, 12500],
    ['I_sc', { has_pack: 'yes', V_max: '50 V', R_pack: '20 mohm to 40 mohm' }, 2500],
    ['V_bemf', { n_max: '6000 rpm', K_v: '100 rpm/V' }, 60],
    ['E_rot', { n_max: '3000 rpm', J_rot: '0.01 kg*m^2' }, 493.480220054],
    ['v_tip', { n_max: '600 rpm', r_rim: '0.1 m' }, 6.28318530718],
    // 58.8 V, 3 mF, 4.7 kΩ: 34.75 s down to 5 V and 5.19 J, as the discharge of a capacitor gives.
    ['t_5', { bleed: 'yes', V_touch: '58.8 V', C_bus: '3000 uF', R_bleed: '4.7 kohm' }, 34.7523256],
    ['E_cap', { V_touch: '58.8 V', C_bus: '3000 uF' }, 5.18616],
    ['t_60', { bleed: 'yes', V_touch: '120 V', C_bus: '1000 uF', R_bleed: '1 kohm' }, Math.LN2],
    ['t_60', { bleed: 'no', V_touch: '58.8 V' }, 0],
    ['t_30', { bleed: 'yes', V_touch: '60 V', C_bus: '1000 uF', R_bleed: '1 kohm' }, Math.LN2],
    // 50 V, 2 mF and 18.375 J: 144.5 V.
    ['V_rise', { V_max: '50 V', C_bus: '2 mF', E_regen: '18.375 J', V_bemf: '0 V' }, 144.482],
    // A motor of 80 V on a bus that an empty pack of 40 V let go: it rings to 120 V at most.
    ['V_rise', { V_max: '40 V to 58 V', C_bus: '2 mF', E_regen: '0 J', V_bemf: '80 V' }, 120],
    ['V_regen', { V_max: '58.8 V', clamped: 'yes', V_clamp: '68 V', V_rise: '90 V' }, 68],
    ['V_regen', { V_max: '58.8 V', clamped: 'yes', V_clamp: '68 V', V_rise: '62 V' }, 62],
    ['V_regen', { V_max: '58.8 V', clamped: 'no', V_rise: '90 V' }, 90],
    ['V_regen', { V_max: '58.8 V', has_motor: 'no' }, 58.8],
    ['V_touch', { V_max: '58.4 V', dV_bus: '2 V', V_regen: '58.4 V', V_bemf: '0 V' }, 59.4],
    ['V_brake', { V_max: '42 V', I_regen: '15 A', R_pack: '50 mohm to 100 mohm' }, 43.5],
    ['I_eq', { dV_packs: '1 V', R_one: '30 mohm', n_packs: '3' }, 1 / 0.045],
    ['V_shift', { I_bus: '50 A', R_neg: '4 mohm' }, 0.2],
    ['I_lim', { I_step: '0.2 A' }, 0.3],
    ['t_drain_d', { Q_reserve: '0.25 Ah', I_q: '150 uA' }, 69.4444444444 * 86400],
    // 371 Wh: 74.2 g in 3030 m³ of air, 24.5 mg in each.
    ['m_HF', { E_pack: '371 Wh' }, 0.0742],
    ['Vol_HF', { E_pack: '371 Wh' }, 3028.5714286],
  ])('%s of %j is %d', (symbol, known, expected) => {
    const { state, lo } = oneOf(symbol, known);
    expect(state).toBe('known');
    expect(Math.abs(lo - expected)).toBeLessThanOrEqual(2e-6 * Math.abs(expected));
  });
});

describe('what is certain although not all is known', () => {
  test('a lower end is kept', () => {
    expect(oneOf('V_touch', { V_max: '63 V', dV_bus: '1 V' })).toMatchObject({
      state: 'unknown',
      lo: 63.5,
      hi: Infinity,
    });
    expect(cautionsWith({ V_max: '63 V', dV_bus: '1 V' }).considered.find(({ id }) => id === 'S29')).toMatchObject({
      truth: 'yes',
      reason: 'V_touch 63.5\u00a0V or more > 60\u00a0V',
    });
    expect(cautionsWith({ V_max: '63 V', dV_bus: '1 V' }).considered.find(({ id }) => id === 'S28')).toMatchObject({
      outcome: 'not shown',
    });
  });
  test('a clamp that may be there lifts nothing: the rise without it is the most', () => {
    expect(oneOf('V_regen', { V_max: '58.8 V', V_rise: '63 V' })).toMatchObject({ state: 'known', lo: 63 });
  });
  test('what a circuit gives counts, but not below what an equation makes certain', () => {
    // 2 mF at 50 V are 2.5 J; a circuit that counted at 40 V said 1.6 J.
    expect(oneOf('E_cap', { E_cap: '1.6 J', C_bus: '2 mF', V_touch: '50 V' }).lo).toBeCloseTo(2.5, 12);
    expect(oneOf('E_cap', { E_cap: '3 J', C_bus: '2 mF', V_touch: '50 V' }).lo).toBe(3);
    expect(oneOf('E_cap', { E_cap: '1.6 J' })).toMatchObject({ state: 'known', lo: 1.6 });
  });
  test('what merely stands in yields to what is given', () => {
    expect(oneOf('dV_bus', { V_max: '50 V' }).lo).toBeCloseTo(10, 12);
    expect(oneOf('dV_bus', { V_max: '50 V', dV_bus: '1 V' }).lo).toBe(1);
  });
  test('no bleeder is endless, whatever the capacitance', () => {
    expect(oneOf('t_5', { bleed: 'no' })).toMatchObject({ state: 'infinite', lo: Infinity });
  });
});

describe('facts', () => {
  const flag = (name: string, known: Known) => {
    const { board, findings } = boardWith(known);
    return flagsOf(board, feedingOf(board, findings, data), data).get(name)!;
  };
  test.each([
    ['yes', 'yes'],
    ['true', 'yes'],
    ['no', 'no'],
    ['false', 'no'],
    ['unknown', 'unknown'],
  ])('%s is read as %s', (text, truth) => {
    expect(flag('wet', { wet: text }).truth).toBe(truth);
  });
  test('silence is unknown', () => expect(flag('has_fuse', {}).truth).toBe('unknown'));
  test('a circuit proves what the spec does not say', () =>
    expect(flag('has_fuse', { I_fuse_br: '1 kA' })).toEqual({ truth: 'yes', provenBy: 'given.I_fuse_br' }));
  test('a spec that denies what a circuit proves is not believed, nor is the circuit', () => {
    expect(flag('has_pack', { has_pack: 'no', V_max: '42 V' })).toEqual({ truth: 'unknown', provenBy: 'given.V_max' });
    expect(cautionsWith({ has_pack: 'no', V_max: '42 V' }).considered.find(({ id }) => id === 'S23')!.reason).toBe(
      'shown because the spec says that no pack is joined, but given.V_max shows otherwise',
    );
  });
});

describe('several sources', () => {
  const twice = (hazard: string, texts: readonly string[], counts: readonly number[] = []) => {
    const circuits = texts.map((text, i): Circuit => {
      const { board } = boardWith({ [hazard]: text });
      return circuitOf([{ ...board.circuits[0]!.results[0]!, id: `c${i}.x` }], { id: `c${i}`, count: counts[i] ?? 1 });
    });
    const results = Object.fromEntries(texts.map((text, i) => [`c${i}.x`, resultFinding(text)]));
    return valuesOf({ ...empty, circuits }, { results, inputs: {} });
  };
  test('the most dangerous counts', () => {
    expect(twice('T_touch', ['60 degC', '72 degC', '50 degC']).get('T_touch')!.range.lo).toBeCloseTo(345.15, 9);
    expect(twice('V_bus_rating', ['100 V', '63 V']).get('V_bus_rating')!.range.lo).toBe(63);
  });
  test('banks add up for energy; for the rise only the largest counts, as two circuits may be one bank', () => {
    const values = twice('C_bus', ['1 mF to 2 mF', '3 mF to 4 mF']);
    expect(values.get('C_bus')!.range.lo).toBeCloseTo(6e-3, 15);
    expect(values.get('C_bus_low')!.range.lo).toBe(3e-3);
  });
  test('a circuit that stands three times counts three times in a sum', () => {
    expect(twice('E_cap', ['2 J'], [3]).get('E_cap')!.range.lo).toBe(6);
    expect(twice('T_touch', ['60 degC'], [3]).get('T_touch')!.range.lo).toBeCloseTo(333.15, 9);
  });
});

describe('inputs', () => {
  const boardOf = (value: InputValue, more: Partial<Input> = {}) => {
    const input: Input = {
      id: 'm.n',
      symbol: 'n',
      unit: parseUnit('rpm'),
      value,
      rating: false,
      usual: false,
      hazard: 'n_max',
      ...more,
    };
    const source: Input = {
      id: 'm.base',
      symbol: 'base',
      unit: parseUnit('rpm'),
      value: { kind: 'condition', quantity: parseQuantity('100 rpm to 3000 rpm') },
      rating: false,
      usual: false,
    };
    const circuit = circuitOf([], { id: 'm', inputs: [input, source], temperature: parseExpression('T_amb') });
    const ambient: Input = {
      id: 'T_amb',
      symbol: 'T_amb',
      unit: parseUnit('degC'),
      value: { kind: 'condition', quantity: parseQuantity('0 degC to 75 degC') },
      rating: false,
      usual: false,
    };
    const findings = {
      results: {},
      inputs: {
        'm.base': { unit: 'rpm', kind: 'condition' as const, min: 100, typ: 1000, max: 3000 },
        'm.n': { unit: 'rpm', kind: value.kind, min: 1500, typ: 1500, max: 1500 },
        T_amb: { unit: '°C', kind: 'condition' as const, min: 0, typ: 25, max: 75 },
      },
    };
    return { board: { ...empty, circuits: [circuit], conditions: [ambient] }, findings };
  };
  const speed = (value: InputValue, more: Partial<Input> = {}) => {
    const { board, findings } = boardOf(value, more);
    const { state, range } = valuesOf(board, findings).get('n_max')!;
    return { state, rpm: (range.lo * 30) / Math.PI };
  };
  test('an expression is taken at its worst, not at the typical value that was found for it', () => {
    const { state, rpm } = speed({ kind: 'expression', tree: parseExpression('1.5 * m.base'), text: '1.5 * base' });
    expect(state).toBe('known');
    expect(rpm).toBeCloseTo(4500, 6);
  });
  test('a part is widened by drift and ageing: 1500 × (1 + 0.001 × 50) × 1.1', () => {
    expect(speed({ kind: 'part', quantity: parseQuantity('1500 rpm ±1000 ppm/K age ±10 %') }).rpm).toBeCloseTo(
      1732.5,
      6,
    );
  });
  test('a usual value that nobody gave is not known', () => {
    expect(speed({ kind: 'exact', quantity: parseQuantity('1500 rpm') }, { usual: true }).state).toBe('unknown');
  });
  test('a tag that is no hazard quantity, or one of another kind, is an error', () => {
    const value: InputValue = { kind: 'exact', quantity: parseQuantity('1500 rpm') };
    expect(() => speed(value, { hazard: 'n_mxa' })).toThrow('m.n feeds n_mxa, which is no hazard quantity.');
    expect(() => speed(value, { hazard: 'V_max' })).toThrow('m.n is in rpm, but feeds V_max, which is in V.');
  });
});

test('a result without a number is unknown and named', () => {
  const { board } = boardWith({ P_sc: '5 kW', has_pack: 'yes' });
  const { considered } = cautionsOf(board, { results: {}, inputs: {} }, data);
  const found = considered.find(({ id }) => id === 'S01')!;
  expect(found).toMatchObject({ outcome: 'shown', truth: 'unknown' });
  expect(found.tests[0]!.missing).toContain('given.P_sc');
});

describe('print', () => {
  const quantity = (symbol: string) => data.quantities.get(symbol)!;
  test.each<[string, number, string]>([
    ['V_touch', 58.801, '58.9\u00a0V'],
    ['V_touch', 58.80000000000001, '58.8\u00a0V'],
    ['V_bus_rating', 63.09, '63.0\u00a0V'],
    ['E_cap', 0.41231, '413\u00a0mJ'],
    ['P_sc', 6216, '6.22\u00a0kW'],
    ['T_touch', 345.151, '72.1\u00a0°C'],
    ['T_amb_min', 262.149, '\u221211.1\u00a0°C'],
    ['t_5', 34.71, '34.8\u00a0s'],
    ['t_5', 0.0301, '0.0301\u00a0s'],
    ['t_5', 601, '10.1\u00a0min'],
    ['t_5', 7201, '2.01\u00a0h'],
    ['t_drain_d', 40.19 * 86400, '40.1\u00a0d'],
    ['n_max', (310.2 * Math.PI) / 30, '311\u00a0rpm'],
    ['m_HF', 0.0742, '75\u00a0g'],
    ['n_packs', 2, '2'],
  ])('%s of %d is %s: toward danger', (symbol, si, text) => {
    expect(figureOf(quantity(symbol), point(si))).toBe(text);
  });
  test('a number keeps on its own side of its limit', () => {
    expect(truthfulFigure(quantity('E_cap'), point(0.9996), point(1))).toBe('999.6\u00a0mJ');
    expect(truthfulFigure(quantity('V_touch'), point(60.0001), point(60))).toBe('60.1\u00a0V');
    expect(truthfulFigure(quantity('V_touch'), point(59.99), point(60))).toBe('59.99\u00a0V');
  });
});

test('results.json gets the numbers that raised it in one unit, and null for what is unknown', () => {
  const { findings } = cautionsWith({
    has_pack: 'yes',
    P_sc: '6.2 kW',
    V_max: '42 V',
    V_fuse_dc: '30 V',
    has_fuse: 'yes',
    has_motor: 'yes',
  });
  const of = (id: string) => findings.find((one) => one.id === id);
  expect(of('S01')).toEqual({ id: 'S01', level: 'warning', because: { P_sc: 6200 }, unit: 'W' });
  expect(of('S15')).toEqual({ id: 'S15', level: 'warning', because: { has_motor: 1 }, unit: '1' });
  expect(of('S03')).toEqual({ id: 'S03', level: 'warning', because: { I_bus: null }, unit: '1' });
  expect(of('S38')).toEqual({ id: 'S38', level: 'danger', because: { V_fuse_dc: 30, V_pk: null }, unit: 'V' });
  expect(JSON.parse(JSON.stringify(findings))).toEqual(findings);
});
