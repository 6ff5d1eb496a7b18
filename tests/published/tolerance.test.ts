import { describe, expect, test } from 'vitest';
import { findInPlace } from './find-in-place.ts';

function near(got: number, wanted: number, room: number): void {
  expect(Math.abs(got - wanted), `${got} instead of ${wanted}`).toBeLessThanOrEqual(room);
}

// TOL-01. Resistive divider, 48 V ±2 %, 100 kohm and 5.9 kohm ±1 %: corners, root of squares and spread (recomputed).
describe('TOL-01: limits of a resistive divider', () => {
  const divider = (word: string) =>
    findInPlace(
      `
given: { V_i: 48 V ±2 % ${word}, R_1: 100 kohm ±1 % ${word}, R_2: 5.9 kohm ±1 % ${word} }
equations: { V_o: { is: V_i * R_2 / (R_1 + R_2), unit: V, says: Output } }`,
    ).results['c.V_o']!;
  const result = divider('uniform');
  test('nominal', () => near(result.nominal, 2.6742209631728047, 1e-12));
  test('worst case, achieved and enclosed', () => {
    near(result.worst.min, 2.5716779139, 1e-9);
    near(result.worst.max, 2.7796819710553646, 1e-9);
    expect(result.worst.proven).toBe(true);
    expect(result.worst.min_bound).toBeLessThanOrEqual(result.worst.min);
    expect(result.worst.max_bound).toBeGreaterThanOrEqual(result.worst.max);
  });
  test('deviation with uniform parts', () => near(result.spread!.sd, 0.03713, 0.005 * 0.03713));
  test('root of squares of the limits', () => {
    const { min, max } = divider('normal').rss;
    near((max - min) / 2, 0.0643112952534, 0.01 * 0.0643);
  });
});

// TOL-02. Power into a load between 40 and 60 ohm from 10 V behind 50 ohm: the greatest lies inside (recomputed).
test('TOL-02: an extreme inside the box is found, not only at its corners', () => {
  const { worst } = findInPlace(
    `
given: { V: 10 V, R_S: 50 ohm, R_L: 40 ohm to 60 ohm }
equations: { P: { is: V^2 * R_L / (R_S + R_L)^2, unit: W, says: Power } }`,
    1000,
  ).results['c.P']!;
  near(worst.max, 0.5, 1e-7);
  near(worst.min, 0.49382716049382713, 1e-9);
  expect(worst.max_bound).toBeGreaterThanOrEqual(0.5);
  expect(worst.max_bound).toBeLessThan(0.5 * (1 + 1e-6));
});

// TOL-05. Standard errors of mean, deviation and a quantile of 100 000 draws of a unit normal (recomputed): four are allowed.
test('TOL-05: a simulated unit normal is as near the true one as its size allows', () => {
  const { mean, sd, quantiles } = findInPlace(
    `
given: { x: 0 sd 1 }
equations: { y: { is: x + 0, unit: 1, says: The same } }`,
  ).results['c.y']!.spread!;
  near(mean, 0, 4 * 0.0031622776601683794);
  near(sd, 1, 4 * 0.0022360791);
  near(quantiles['0.975'], 1.959963984540054, 4 * 0.008447);
  near(quantiles['0.025'], -1.959963984540054, 4 * 0.008447);
});

// DER-08. Margins of 65, 12, 120 and 90 against 100, 20, 200 and 300 at 0.8, 0.75, 0.75 and 0.65 (recomputed).
test('DER-08: the governing one of several derated limits', () => {
  const { checks, ranking } = findInPlace(
    `
given: { V_DS: 65, V_GS: 12, I_D: 120, P: 90 }
checks:
  voltage: { holds: V_DS <= 0.8 * 100, because: drain-source rating }
  gate: { holds: V_GS <= 0.75 * 20, because: gate-source rating }
  current: { holds: I_D <= 0.75 * 200, because: current rating }
  power: { holds: P <= 0.65 * 300, because: power rating }`,
    1000,
  );
  const margins = Object.fromEntries(checks.map(({ id, margin }) => [id, margin]));
  expect(margins['c.voltage']).toBeCloseTo(0.1875, 9);
  expect(margins['c.gate']).toBeCloseTo(0.2, 9);
  expect(margins['c.current']).toBeCloseTo(0.2, 9);
  expect(margins['c.power']).toBeCloseTo(0.538461538, 8);
  expect(ranking[0]).toBe('c.voltage');
});
