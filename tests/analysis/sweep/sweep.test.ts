import { describe, expect, test } from 'vitest';
import type { SweepFinding } from '../../../src/analysis/findings.ts';
import { found } from '../found.ts';

const spec = (plot: string, conditions = 'T_amb: -10 degC to 45 degC typ 25 degC', cases = '') => `
conditions:
  ${conditions}
  I: 5 A to 70 A typ 20 A
${cases}
circuits:
  feed:
    given: { V_0: 40 V to 50 V typ 45 V, R_0: 10 mohm ±20 % }
    equations:
      V: { is: V_0 - I * R_0, unit: V, says: Voltage behind the lead }
  x:
    refs: { R: R1 }
    given: { I_x: I, R: 2 mohm ±10 %, V_in: feed.V, P_max: 8 / 10 / 12 W, k: 1 }
    equations:
      P: { is: k * I_x^2 * R, unit: W, says: Heat in the resistor }
      Q: { is: V_in^2 / (1 ohm) + V_in * I, unit: W, says: Power from the feed }
    checks:
      heat: { holds: P <= P_max, because: test }
    plots: [ ${plot} ]
`;
const sweep = (text: string): SweepFinding => {
  const { sweeps, sweeps_left_out: out } = found(text);
  expect(out).toEqual([]);
  expect(sweeps).toHaveLength(1);
  return sweeps[0]!;
};
const atX = (one: SweepFinding, x: number) => one.runs.flat().find((point) => Math.abs(point.x - x) < 1e-9)!;

describe('a plot over a condition', () => {
  const one = sweep(spec('{ of: P, over: I_x, limit: heat }'));

  test('goes to what stands behind a reference, over all that must be endured', () => {
    expect(one).toMatchObject({ over: 'x.I_x', stands_for: 'I', axis: 'condition', over_typical: 20, over_unit: 'A' });
    expect([one.runs[0]![0]!.x, one.runs.at(-1)!.at(-1)!.x]).toEqual([5, 70]);
  });
  test('has the typical line, the band and the tightest limit: I²·R with R ±10 %', () => {
    for (const { x, typical, min, max, limit, slack } of one.runs.flat()) {
      expect(typical).toBeCloseTo(x ** 2 * 0.002, 9);
      expect(min).toBeCloseTo(x ** 2 * 0.0018, 9);
      expect(max).toBeCloseTo(x ** 2 * 0.0022, 9);
      expect(limit).toBeCloseTo(8, 9);
      expect(slack).toBeCloseTo(8 - x ** 2 * 0.0022, 9);
    }
    expect(one).toMatchObject({ proven: true, gap: 0, certain: true, apart: [], slack_unit: 'W', check: 'x.heat' });
  });
  test('shows the typical place and the worst corner', () => {
    expect(atX(one, 20)).toBeDefined();
    expect(atX(one, 70).max).toBeCloseTo(found(spec('')).results['x.P']!.worst.max, 9);
  });
});

test('cases cut the curve where they begin and end, and leave a gap where no case applies', () => {
  const cases =
    'cases: { low: { I: 5 A to 20 A typ 10 A, T_amb: 0 degC to 10 degC typ 5 degC }, high: { I: 40 A to 70 A typ 50 A } }';
  const { runs } = sweep(spec('{ of: P, over: I_x }', undefined, cases));
  expect(runs.map((run) => [run[0]!.x, run.at(-1)!.x])).toEqual([
    [5, 20],
    [40, 70],
  ]);
});

test('a chosen part goes from half to twice its value, exactly there at each place', () => {
  const one = sweep(spec('{ of: P, over: R, limit: heat }'));
  expect(one).toMatchObject({ axis: 'choice', stands_for: 'x.R', over_typical: 2 });
  expect([one.runs[0]![0]!.x, one.runs.at(-1)!.at(-1)!.x]).toEqual([1, 4]);
  expect(atX(one, 4).max).toBeCloseTo(70 ** 2 * 0.004, 9);
  expect(atX(one, 4).min).toBeCloseTo(5 ** 2 * 0.004, 9);
});

test('a value that another circuit finds is moved by itself, over what can be brought; what acts on both is named', () => {
  const one = sweep(spec('{ of: Q, over: V_in }'));
  expect(one).toMatchObject({ axis: 'result', stands_for: 'feed.V' });
  const [first, last] = [one.runs[0]![0]!, one.runs.at(-1)!.at(-1)!];
  expect([first.x, last.x].map((x) => Number(x.toFixed(6)))).toEqual([40 - 70 * 0.012, 50 - 5 * 0.008]);
  expect(first.max).toBeCloseTo(first.x ** 2 + first.x * 70, 6);
  expect(one.apart).toEqual(['I']);
});

test.each([
  ['{ of: P, over: k }', 'x.k is one fixed value on this board'],
  ['{ of: P, over: V_in }', 'x.P does not depend on x.V_in on this board'],
])('%s is left out with its reason', (plot, reason) => {
  const { sweeps, sweeps_left_out: out } = found(spec(plot));
  expect(sweeps).toEqual([]);
  expect(out).toMatchObject([{ circuit: 'x', reason }]);
});

test('no board that is drawn inside the ranges leaves the band', () => {
  const text = `
conditions:
  u: 1 V to 3 V typ 2 V
circuits:
  x:
    given: { a: 1 kohm ±20 %, b: 2 kohm ±20 %, c: 0.2 to 0.9 typ 0.5, U: u }
    equations:
      y: { is: "U * b / (a + b) * sqrt(c * (1 - c))", unit: V, says: test }
    plots: [ { of: y, over: U } ]
`;
  const one = sweep(text);
  const part = (i: number, prime: number) => ((i * prime) % 101) / 101;
  for (const { x, min, max } of one.runs.flat()) {
    for (let i = 0; i < 300; i++) {
      const [a, b, c] = [800 + 400 * part(i, 7), 1600 + 800 * part(i, 13), 0.2 + 0.7 * part(i, 29)] as const;
      const y = ((x * b) / (a + b)) * Math.sqrt(c * (1 - c));
      expect(y).toBeGreaterThanOrEqual(min - one.gap - 2e-3 * (max - min));
      expect(y).toBeLessThanOrEqual(max + one.gap + 2e-3 * (max - min));
    }
    // c = 1/2 lies inside its range: the greatest is no corner.
    expect(max).toBeGreaterThan(((x * 2400) / 3200) * 0.5 * (1 - 2e-3));
  }
});

test('the heat of the whole board is drawn over the condition that moves it most', () => {
  const { sweeps } = found(`
conditions:
  I: 1 A to 5 A typ 2 A
  T: 0 degC to 40 degC typ 25 degC
circuits:
  x:
    given: { R: 0.1 ohm ±10 %, a: 0.004 1/K }
    equations:
      P: { is: "I^2 * R * (1 + a * (T - 25 degC))", unit: W, says: Heat, heat: true }
  y:
    equations: { all: { is: board.heat, unit: W, says: Heat of the board } }
`);
  expect(sweeps).toMatchObject([{ circuit: 'board', of: 'board.heat', over: 'I', axis: 'condition' }]);
  expect(sweeps[0]!.runs.at(-1)!.at(-1)!.max).toBeCloseTo(25 * 0.11 * 1.06, 9);
});
