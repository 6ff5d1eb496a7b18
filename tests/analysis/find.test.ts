import { describe, expect, test } from 'vitest';
import { circuit, found } from './found.ts';

const relative = (got: number, wanted: number): number => Math.abs(got / wanted - 1);

describe('agrees with arithmetic by hand to 1e-12', () => {
  test('a divider: V_in·R_bot/(R_top + R_bot), worst with R_bot high, R_top low', () => {
    const { results } = found(
      circuit(
        { V_in: '30 V to 42 V typ 36 V', R_top: '150 kohm ±1 %', R_bot: '10 kohm ±1 %' },
        { V: ['V_in * R_bot / (R_top + R_bot)', 'V'] },
      ),
    );
    const { nominal, worst } = results['x.V']!;
    expect(relative(nominal, 2.25)).toBeLessThan(1e-12);
    expect(relative(worst.max, (42 * 10.1) / (148.5 + 10.1))).toBeLessThan(1e-12);
    expect(relative(worst.min, (30 * 9.9) / (151.5 + 9.9))).toBeLessThan(1e-12);
    expect(worst.at_max).toEqual({ 'x.V_in': 42, 'x.R_top': 148.5, 'x.R_bot': 10.1 });
    expect(worst.proven).toBe(true);
  });
  test('a shunt: 15 A through 2 mΩ is 30 mV and 0.45 W (common practice, no source)', () => {
    const { results } = found(circuit({ I: '15 A', R: '2 mohm ±1 %' }, { V: ['I * R', 'mV'], P: ['I^2 * R', 'W'] }));
    expect(relative(results['x.V']!.nominal, 30)).toBeLessThan(1e-12);
    expect(relative(results['x.P']!.nominal, 0.45)).toBeLessThan(1e-12);
    expect(relative(results['x.P']!.worst.max, 0.4545)).toBeLessThan(1e-12);
  });
  test('a step-down feedback divider: V_ref·(1 + R_top/R_bot)', () => {
    const { results } = found(
      circuit(
        { V_ref: '0.788 / 0.8 / 0.812 V', R_top: '31.6 kohm ±1 %', R_bot: '10 kohm ±1 %' },
        { V: ['V_ref * (1 + R_top / R_bot)', 'V'] },
      ),
    );
    expect(relative(results['x.V']!.nominal, 3.328)).toBeLessThan(1e-12);
    expect(relative(results['x.V']!.worst.max, 0.812 * (1 + (31.6 * 1.01) / 9.9))).toBeLessThan(1e-12);
  });
  test('drift and ageing: value × (1 + initial) × (1 + tc·ΔT) × (1 + ageing)', () => {
    const { results } = found(
      `conditions: { T_amb: -15 degC to 85 degC typ 25 degC }\n${circuit({ R: '10 kohm ±1 % ±100 ppm/K age ±0.5 %' }, { G: ['R', 'kohm'] })}`,
    );
    expect(relative(results['x.G']!.worst.max, 10 * 1.01 * (1 + 100e-6 * 60) * 1.005)).toBeLessThan(1e-12);
    expect(relative(results['x.G']!.worst.min, 10 * 0.99 * (1 - 100e-6 * 60) * 0.995)).toBeLessThan(1e-12);
  });
});

test('nominal lies inside the worst case, the worst case inside its bounds', () => {
  const { results } = found(
    circuit(
      { a: '2 ±10 %', b: '-1 to 3 typ 1', c: '4 / 5 / 7' },
      { y: ['a * b^2 - c * sin(b)', '1'], z: ['abs(b) / a + max(b, c - 4)', '1'] },
    ),
  );
  for (const { nominal, worst } of Object.values(results)) {
    expect(worst.min_bound).toBeLessThanOrEqual(worst.min);
    expect(worst.min).toBeLessThanOrEqual(nominal);
    expect(nominal).toBeLessThanOrEqual(worst.max);
    expect(worst.max).toBeLessThanOrEqual(worst.max_bound);
    expect(worst.proven).toBe(true);
    expect(worst.max_bound - worst.max).toBeLessThanOrEqual(2.1e-6 * (worst.max - worst.min));
  }
});

describe('what two results share cancels', () => {
  test.each([
    ['y - y', 0],
    ['y / y', 1],
    ['(y + 1) / (a * b + 1)', 1],
  ])('%s has no spread and a worst case of no width', (is, value) => {
    const { results } = found(circuit({ a: '2 ±10 %', b: '1 to 3 typ 2' }, { y: ['a * b', '1'], q: [is, '1'] }));
    expect(results['x.q']).toMatchObject({
      nominal: value,
      worst: { min: value, max: value, min_bound: value, max_bound: value, proven: true },
      spread: null,
    });
  });
});

describe('a check', () => {
  const divider = (limit: string) =>
    found(
      circuit(
        { V_in: '42 V', R_top: '150 kohm ±1 %', R_bot: '10 kohm ±1 %' },
        { V: ['V_in * R_bot / (R_top + R_bot)', 'V'] },
        { scale: `V <= ${limit}` },
      ),
    );
  test.each([
    ['3.3 V', 'pass'],
    ['2.7 V', 'pass'],
    ['2.6 V', 'fail'],
  ])('V <= %s: %s', (limit, verdict) => {
    const [check] = divider(limit).checks;
    const worst = (42 * 10.1) / (148.5 + 10.1);
    expect(check).toMatchObject({ id: 'x.scale', verdict, unit: 'V' });
    expect(check!.worst_slack).toBeCloseTo(Number.parseFloat(limit) - worst, 12);
    expect(check!.margin).toBeCloseTo((Number.parseFloat(limit) - worst) / Number.parseFloat(limit), 12);
  });
  test('holds by less than the target: marginal', () => {
    const findings = found(
      `margins: { target: 10 % }\n${circuit({ V: '2.9 V ±1 %' }, { U: ['V', 'V'] }, { low: 'U <= 3 V' })}`,
    );
    expect(findings.checks[0]).toMatchObject({ verdict: 'marginal', target: 0.1 });
    expect(findings.verdict).toBe('marginal');
  });
  test('met exactly: no rounding turns it into a failure', () => {
    const findings = found(circuit({ a: '0.1 ±0 %', b: '0.2 ±0 %' }, { c: ['a + b', '1'] }, { sum: 'c <= 0.3' }));
    expect(findings.checks[0]).toMatchObject({ verdict: 'pass', worst_slack: 0 });
  });
  test('a deviation carries a failure, and the board takes the next worst verdict', () => {
    const findings = found(
      `deviations: [{ check: x.low, reason: Bench shows less, approved: 2026-02-01 }]\n${circuit({ V: '3.1 V ±1 %' }, { U: ['V', 'V'] }, { low: 'U <= 3 V' })}`,
    );
    expect(findings.checks[0]).toMatchObject({ verdict: 'accepted', deviation: 'D-1' });
    expect(findings).toMatchObject({ verdict: 'pass', yield: { estimate: 1 } });
  });
  test('temperatures are compared as they are, and their slack is in kelvin', () => {
    const findings = found(
      `conditions: { T_amb: -10 degC to 45 degC typ 25 degC }\n${circuit({ P: '10 W ±10 %', R_th: '4 K/W' }, { T_j: ['T_amb + P * R_th', 'degC'] }, { hot: 'T_j <= 110 degC' })}`,
    );
    expect(findings.results['x.T_j']).toMatchObject({
      unit: '°C',
      nominal: expect.closeTo(65, 9),
      worst: { max: expect.closeTo(89, 9) },
    });
    expect(findings.checks[0]).toMatchObject({
      unit: 'K',
      worst_slack: expect.closeTo(21, 9),
      margin: expect.closeTo(21 / 110, 9),
    });
  });
});

describe('operating cases', () => {
  const text = (cases: string) =>
    `conditions: { I: 1 A to 10 A typ 5 A, V: 10 V to 20 V typ 15 V }\n${cases}${circuit({ R: '1 ohm' }, { P: ['V * I', 'W'] })}`;
  test('without any, the whole of every range is searched', () => {
    expect(found(text('')).results['x.P']!.worst).toMatchObject({ min: 10, max: 200 });
  });
  test('with them, only they are, and a condition that a case does not name keeps its range', () => {
    const { worst } = found(text('cases: { climb: { I: 8 A to 10 A, V: 10 V to 12 V }, cruise: { I: 1 A to 3 A } }\n'))
      .results['x.P']!;
    expect(worst).toMatchObject({ min: 10, min_case: 'cruise', max: 120, max_case: 'climb' });
  });
});

describe('simulated boards', () => {
  test('the same seed gives the same boards, another seed others', () => {
    const text = circuit({ R: '1 kohm ±1 %' }, { G: ['R', 'ohm'] });
    expect(found(text)).toEqual(found(text));
    expect(found(text, { seed: 2 }).results['x.G']!.spread!.mean).not.toBe(found(text).results['x.G']!.spread!.mean);
  });
  test('another part on the board leaves the draws of the first alone', () => {
    const alone = found(circuit({ R: '1 kohm ±1 %' }, { G: ['R', 'ohm'] })).results['x.G']!.spread;
    const both = found(circuit({ A: '1 kohm ±1 %', R: '1 kohm ±1 %' }, { H: ['A', 'ohm'], G: ['R', 'ohm'] })).results[
      'x.G'
    ]!.spread;
    expect(both).toEqual(alone);
  });
  test('a part that stands three times is drawn three times: the sum of heats spreads by √3, not 3', () => {
    const text = `circuits:\n  leg:\n    count: 3\n    given: { P_0: 1 W ±30 % }\n    equations:\n      P: { is: P_0, unit: W, says: Heat, heat: true }\n  case:\n    given: { H: board.heat }\n    equations:\n      Q: { is: H, unit: W, says: All heat }\n`;
    const { results } = found(text, { trials: 20_000 });
    expect(results['board.heat']!.nominal).toBeCloseTo(3, 12);
    expect(results['board.heat']!.worst.max).toBeCloseTo(3.9, 12);
    expect(results['board.heat']!.spread!.sd / results['leg.P']!.spread!.sd).toBeCloseTo(Math.sqrt(3), 1);
  });
  test('a matched pair keeps its ratio', () => {
    const text =
      'circuits:\n  x:\n    given: { R_a: 10 kohm ±1 %, R_b: { is: 20 kohm ±1 %, tracks: R_a within 0.1 % } }\n    equations:\n      k: { is: R_b / R_a, unit: 1, says: Ratio }\n';
    const { nominal, worst } = found(text).results['x.k']!;
    expect(nominal).toBeCloseTo(2, 12);
    expect([worst.min, worst.max]).toEqual([expect.closeTo(1.998, 9), expect.closeTo(2.002, 9)]);
  });
});
