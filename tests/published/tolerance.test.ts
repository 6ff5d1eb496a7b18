import { expect, test } from 'vitest';
import { findInPlace } from './find-in-place.ts';

// The figures of these cases are held in src/published/data/tolerance.yaml; here stands what is no figure.

test('TOL-01: the corners of a divider are proven, and the bounds enclose them', () => {
  const { worst } = findInPlace(
    `
given: { V_i: 48 V ±2 %, R_1: 100 kohm ±1 %, R_2: 5.9 kohm ±1 % }
equations: { V_o: { is: V_i * R_2 / (R_1 + R_2), unit: V, says: Output } }`,
    1000,
  ).results['c.V_o']!;
  expect(worst.proven).toBe(true);
  expect(worst.min_bound).toBeLessThanOrEqual(worst.min);
  expect(worst.max_bound).toBeGreaterThanOrEqual(worst.max);
});

test('TOL-02: an extreme inside the box is enclosed, not only its corners', () => {
  const { worst } = findInPlace(
    `
given: { V: 10 V, R_S: 50 ohm, R_L: 40 ohm to 60 ohm }
equations: { P: { is: V^2 * R_L / (R_S + R_L)^2, unit: W, says: Power } }`,
    1000,
  ).results['c.P']!;
  expect(worst.max_bound).toBeGreaterThanOrEqual(0.5);
  expect(worst.max_bound).toBeLessThan(0.5 * (1 + 1e-6));
});

test('DER-08: the thinnest of several derated limits stands first', () => {
  const { ranking } = findInPlace(
    `
given: { V_DS: 65, V_GS: 12, I_D: 120, P: 90 }
checks:
  gate: { holds: V_GS <= 0.75 * 20, because: gate-source rating }
  voltage: { holds: V_DS <= 0.8 * 100, because: drain-source rating }
  current: { holds: I_D <= 0.75 * 200, because: current rating }
  power: { holds: P <= 0.65 * 300, because: power rating }`,
    1000,
  );
  expect(ranking[0]).toBe('c.voltage');
});

test('UNI-06: volts and amperes are not added', () => {
  expect(() =>
    findInPlace('given: { V: 1 V, I: 1 A }\nequations: { x: { is: V + I, unit: V, says: Nonsense } }'),
  ).toThrow(/dimension|units|disagree/i);
});

test('UNC-05: the linear method gives no spread at a stationary point; simulation does', () => {
  const { spread, rss } = findInPlace(
    `
given: { a: 0 sd 0.005, b: 0 sd 0.005 }
equations: { y: { is: a^2 + b^2, unit: 1, says: Loss } }`,
  ).results['c.y']!;
  expect(rss.max - rss.min).toBe(0);
  expect(spread!.sd).toBeGreaterThan(45e-6);
});
