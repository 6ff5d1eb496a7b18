import { expect, test } from 'vitest';
import { looksLikeQuantity } from '../../src/quantity/looks-like-quantity.ts';

test.each([
  ...['10', '3.3 V', '-5 V', '+5 V', '.5 V', '1e3', '1.2×10⁵ V', '5 %/K', '10 K/W', '10 V*s', '5 s^-1', '4 mm2/s'],
  ...['0.0039 1/K', '35 W/(m K)', '10 nV/sqrt(Hz)', '10 uV/√Hz', '5 A^2*s'],
  ...['4/5/6 uA', '4 / 5 / 6', '-5 / -4 / -3 mV', '3 to 5 V', '2.1 mohm sd 0.05 mohm', 'mean 3 V sd 1 V'],
  ...['100 uF +80 % -20 %', '100 uF +80/-20 %', '100 uF + 80 % - 20 %', '10 V age -20 %'],
])('%s is a quantity', (text) => expect(looksLikeQuantity(text)).toBe(true));

test.each([
  ...[
    '3,3 V',
    '10 kOhmm ±1 %',
    'V ±1 %',
    '10 V +5 %',
    '3.0–4.2 V',
    '3..4 V',
    '１０ V',
    '1 000 V',
    '4k7',
    '10 k',
    '10 R',
  ],
  ...['10 V foo', '2 pi', '5. V', '1_000 V', '6 to 4 V', '10 V/R'],
])('%s is meant as a quantity', (text) => expect(looksLikeQuantity(text)).toBe(true));

test.each([
  ...['2 * R_top', 'pack.V_bat', 'T_amb + 15 K', '1 / 2', '(3 V)', '10 mV * 2', '2*x', '1/K', '1/2/x', '2^3', 'x ^ 2'],
  ...['10 V - 5 V', '10 V-5 V', '3 V_x', '10 K / W', '10 V > x', '1 / 10 ms', '3 [V/us]', 'sqrt(2)', '0.5 + 10 %'],
  ...['-R_x', '', ' ', 'age', '2 * max(a, b)', '10 V * t', '10 V/us * t', '3 R_top', 'normal', 'x.y'],
  `${'1 + '.repeat(200)}1`,
])('%j is an expression', (text) => expect(looksLikeQuantity(text)).toBe(false));
