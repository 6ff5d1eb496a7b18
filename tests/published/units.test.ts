import { describe, expect, test } from 'vitest';
import { normalCdf } from '../../src/analysis/statistics.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { findInPlace } from './find-in-place.ts';

const si = (text: string): number => parseQuantity(text).typ;

function near(got: number, wanted: number, share: number): void {
  expect(Math.abs(got - wanted), `${got} instead of ${wanted}`).toBeLessThanOrEqual(share * Math.abs(wanted));
}

// UNI-01. NIST SP 811; ASTM B258 (memory).
test.each([
  ['1 mil', 25.4e-6],
  ['1 mil^2', 0.00064516e-6],
  ['1 cmil', 0.0005067074790975e-6],
  ['1 inch', 0.0254],
])('UNI-01: %s is %d in SI units', (text, value) => near(si(text), value, 1e-10));

// UNI-03. ISO 80000-5 (recomputed).
describe('UNI-03: temperatures and their differences', () => {
  const { results } = findInPlace(
    `
given: { T: 25 degC, T_hot: 65 degC, a: 0.0039 1/K }
equations:
  dT: { is: T_hot - T, unit: K, says: Difference }
  k: { is: 1 + a * (T_hot - T), unit: 1, says: Factor }
  T_up: { is: T + dT, unit: degC, says: Sum of a temperature and a difference }`,
    100,
  );
  test('25 °C is 298.15 K', () => expect(si('25 degC')).toBeCloseTo(298.15, 9));
  test('a difference has no zero of its own', () => expect(results['c.dT']!.nominal).toBeCloseTo(40, 9));
  test('a coefficient per kelvin takes the difference', () => expect(results['c.k']!.nominal).toBeCloseTo(1.156, 9));
  test('and a difference leads back', () => expect(results['c.T_up']!.nominal).toBeCloseTo(65, 9));
});

// UNI-02. Foil of one ounce a square foot at 8.94 g/cm³ (recomputed): 34.13 um by mass, 35 um by custom.
test('UNI-02: foil weight and thickness', () => {
  const { results } = findInPlace(
    `
given: { w: 28.349523125 g, a: 12 inch, rho: 8.94 g/cm^3 }
equations: { t: { is: w / a^2 / rho, unit: um, says: Thickness } }`,
    100,
  );
  expect(Math.abs(results['c.t']!.nominal - 34.13)).toBeLessThanOrEqual(0.01);
});

// UNI-06. Identities of the SI (recomputed).
test('UNI-06: dimensions come together as they must', () => {
  const { results } = findInPlace(
    `
given: { V: 10 V, R: 2 kohm, L: 22 uH, C: 4.7 uF, Q: 120 nC, V_g: 12 V, M: 0.35 N*m, n: 3000 rpm }
equations:
  I: { is: V / R, unit: mA, says: Current }
  Z: { is: sqrt(L / C), unit: ohm, says: Impedance }
  C_g: { is: Q / V_g, unit: nF, says: Capacitance }
  tau: { is: R * C, unit: ms, says: Time }
  P: { is: M * n, unit: W, says: Power }`,
    100,
  );
  near(results['c.I']!.nominal, 5, 1e-12);
  near(results['c.Z']!.nominal, 2.163527, 1e-6);
  near(results['c.C_g']!.nominal, 10, 1e-12);
  near(results['c.tau']!.nominal, 9.4, 1e-12);
  near(results['c.P']!.nominal, 109.9557429, 1e-8);
});

test('UNI-06: volts and amperes are not added', () => {
  expect(() =>
    findInPlace('given: { V: 1 V, I: 1 A }\nequations: { x: { is: V + I, unit: V, says: Nonsense } }'),
  ).toThrow(/dimension|units|disagree/i);
});

// PRB-06. NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6 (memory): mean 16, deviation 2, limits 8 and 20.
test('PRB-06: fraction of a normal outside its limits', () => {
  near(1 - normalCdf((20 - 16) / 2) + normalCdf((8 - 16) / 2), 0.0227818, 1e-4);
});
