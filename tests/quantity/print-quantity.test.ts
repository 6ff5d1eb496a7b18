import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { formatQuantity, printQuantity } from '../../src/quantity/print-quantity.ts';
import type { Quantity } from '../../src/quantity/quantity.ts';
import { parseUnit } from '../../src/quantity/units.ts';
import { quantityText } from './quantity-text.ts';

test.each([
  ['10', '10'],
  ['3.30V', '3.3 V'],
  ['2e6 rpm', '2×10⁶ rpm'],
  ['10kohm +/-1%', '10 kΩ ±1 %'],
  ['10 kohm age ±0.5 % uniform ±100 ppm/degC ±1 %', '10 kΩ ±1 % ±100 ppm/°C age ±0.5 % uniform'],
  ['100 uF +80/-20 %', '100 µF +80 % −20 %'],
  ['100 uF -20 % +80 %', '100 µF +80 % −20 %'],
  ['10 kohm +0.05 % -1000 ppm', '10 kΩ +0.05 % −0.1 %'],
  ['0 V ±5 mV ±0.5 uV/K', '0 V ±5 mV ±0.5 µV/K'],
  ['10 kohm +50 -20 ppm/K', '10 kΩ +50 ppm/K −20 ppm/K'],
  ['1 F age -20 %', '1 F age +0 % −20 %'],
  ['25 degC ±2 K', '25 °C ±2 K'],
  ['-5 V +10 % -3.3 %', '−5 V +10 % −3.3 %'],
  ['900 mV / 1 V / 1.1 V', '0.9 / 1 / 1.1 V'],
  ['4 / 5 / 6 uA uniform ±100 ppm/K', '4 / 5 / 6 µA ±100 ppm/K uniform'],
  ['mean 2.1 mohm sd 50 uohm', '2.1 mΩ sd 0.05 mΩ'],
  ['25 degC sd 2 degC', '25 °C sd 2 K'],
  ['3 to 4.2 V', '3 V to 4.2 V typ 3.6 V'],
  ['-10 to 45 degC typ 25', '−10 °C to 45 °C typ 25 °C'],
])('%s is printed %s', (typed, printed) => expect(printQuantity(parseQuantity(typed))).toBe(printed));

test('what is printed reads back to the same quantity, to the last bit', () => {
  fc.assert(
    fc.property(quantityText, (typed) => {
      const quantity = parseQuantity(typed);
      const printed = printQuantity(quantity);
      const again = parseQuantity(printed);
      // `+0.05 % -1000 ppm` is printed in one unit, so only what the numbers say is compared.
      expect({ ...again, text: '', typedIn: {} }).toEqual({ ...quantity, text: '', typedIn: {} });
      expect(printQuantity(again)).toBe(printed);
    }),
    { numRuns: 3000 },
  );
});

test('a tolerance that nobody typed is printed in percent where that is short, else in the unit', () => {
  const made = (typ: number, min: number, max: number, unit = 'kohm'): Quantity => ({
    form: 'tolerance',
    text: '',
    unit: parseUnit(unit),
    min,
    typ,
    max,
    distribution: 'normal',
  });
  expect(printQuantity(made(10000, 9900, 10100))).toBe('10 kΩ ±1 %');
  expect(printQuantity(made(10000, 9900, 10123.456789))).toBe('10 kΩ +0.123456789 kΩ −0.1 kΩ');
  expect(printQuantity(made(298.15, 297.15, 299.15, 'degC'))).toBe('25 °C ±1 K');
  expect(printQuantity(made(0, -0.005, 0.005, 'mV'))).toBe('0 mV ±5 mV');
  expect(printQuantity(made(0.9, 0.89, 0.91, '%'))).toMatch(/^90 % ±11111\.\d+ ppm$/);
  expect(printQuantity({ ...made(0, -1, 1, 'V'), driftAbsolute: { min: -1e-6, max: 1e-6 } })).toBe(
    '0 V ±1 V ±1×10⁻⁶ V/K',
  );
});

describe('formatQuantity', () => {
  const row = (typed: string) => {
    const { min, value, max, tolerance } = formatQuantity(parseQuantity(typed));
    expect(new Set([min.unit, value.unit, max.unit]).size).toBe(1);
    return [min.number, value.number, max.number, value.unit, tolerance];
  };
  test.each([
    ['10', ['10', '10', '10', '', '']],
    ['150 kohm ±1 % ±100 ppm/K', ['148.5', '150', '151.5', 'kΩ', '±1 % ±100 ppm/K']],
    ['4 / 5 / 6 uA', ['4', '5', '6', 'µA', 'triple']],
    ['3.0 V to 4.2 V typ 3.6 V', ['3', '3.6', '4.2', 'V', 'range']],
    ['2.1 mohm sd 0.05 mohm', ['1.9', '2.1', '2.3', 'mΩ', 'sd 0.05 mΩ']],
    ['0 V ±5 mV', ['−5', '0', '5', 'mV', '±5 mV']],
    ['30 deg ±1 deg', ['29', '30', '31', '°', '±1 °']],
    ['1 m ±1e-7 %', ['0.999999', '1', '1.00001', 'm', '±1×10⁻⁷ %']],
  ])('%s', (typed, expected) => expect(row(typed)).toEqual(expected));
});
