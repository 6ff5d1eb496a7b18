import { expect, test } from 'vitest';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';

const si = (text: string): number => parseQuantity(text).typ;

// NIST SP 811 (2008), appendix B.8, factors for units listed alphabetically (memory); seven digits, as printed there.
test.each([
  ['1 Ah', 3.6e3],
  ['1 Wh', 3.6e3],
  ['1 kWh', 3.6e6],
  ['1 cmil', 5.067075e-10],
  ['1 d', 8.64e4],
  ['1 h', 3.6e3],
  ['1 min', 6e1],
  ['1 deg', 1.745329e-2],
  ['1 inch', 2.54e-2],
  ['1 inch^2', 6.4516e-4],
  ['1 mil', 2.54e-5],
  ['1 rev', 6.283185],
  ['1 rpm', 1.047198e-1],
  ['1 W/inch^2', 1.550003e3],
])('SP 811: %s', (text, factor) => {
  expect(Math.abs(si(text) / factor - 1)).toBeLessThan(5e-7);
});

// UNI-05. SI definitions (recomputed): ω = 2π·n/60, K_t = 60/(2π·K_v).
test('UNI-05: speed and torque constant of a motor', () => {
  expect(si('6000 rpm')).toBeCloseTo(628.3185307, 7);
  expect((7 * si('6000 rpm')) / si('1 rev')).toBeCloseTo(700, 9);
  expect(1 / si('100 rpm/V')).toBeCloseTo(0.0954929659, 10);
});

// SI Brochure 9th ed., 2.3.1 and table 8 (memory).
test('the zero of the Celsius scale', () => {
  expect(si('0 degC')).toBe(273.15);
  expect(si('25 degC')).toBe(298.15);
});
