import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  aligned,
  figureTex,
  fixed,
  outward,
  percent,
  plain,
  printedValue,
  toSi,
  typedUnitFor,
  unitFor,
} from '../../src/packet/figures.ts';
import { parseUnit } from '../../src/quantity/units.ts';

const [V, kOhm, degC, W, F] = ['V', 'kohm', 'degC', 'W', 'F'].map(parseUnit) as [
  ReturnType<typeof parseUnit>,
  ReturnType<typeof parseUnit>,
  ReturnType<typeof parseUnit>,
  ReturnType<typeof parseUnit>,
  ReturnType<typeof parseUnit>,
];
const size = fc.double({ min: 1e-12, max: 1e9, noNaN: true });
const signed = fc.tuple(size, fc.constantFrom(1, -1)).map(([value, sign]) => value * sign);

describe('outward', () => {
  test('never lies on the safe side of the value by more than a billionth', () => {
    fc.assert(
      fc.property(signed, (value) => {
        const slip = 1e-9 * Math.abs(value);
        expect(printedValue(outward(value, V, 'up'))).toBeGreaterThanOrEqual(value - slip);
        expect(printedValue(outward(value, V, 'down'))).toBeLessThanOrEqual(value + slip);
      }),
    );
  });
  test('goes no further than one unit in the last of four digits', () => {
    fc.assert(
      fc.property(size, (value) => {
        expect(printedValue(outward(value, V, 'up')) - value).toBeLessThanOrEqual(1.001e-3 * value);
      }),
    );
  });
  test('rounding dust does not add to the last digit', () => {
    expect(outward(2.6250000000000004, V, 'up')).toEqual({ number: '2.625', unit: 'V' });
    expect(outward(2.6251, V, 'up')).toEqual({ number: '2.626', unit: 'V' });
    expect(outward(-2.6251, V, 'down')).toEqual({ number: '−2.626', unit: 'V' });
  });
  test('temperatures keep their zero', () => {
    expect(outward(toSi(-9.597, degC), degC, 'down')).toEqual({ number: '−9.597', unit: '°C' });
  });
});

test('a plain figure drops the zeros that say nothing, and keeps those that do', () => {
  expect(plain(36, V)).toEqual({ number: '36', unit: 'V' });
  expect(plain(150e3, kOhm)).toEqual({ number: '150', unit: 'kΩ' });
  expect(plain(1e6, kOhm)).toEqual({ number: '1', unit: 'MΩ' });
  expect(plain(33.3333333, V)).toEqual({ number: '33.33', unit: 'V' });
  expect(plain(3.00004, V)).toEqual({ number: '3.000', unit: 'V' });
  expect(plain(0, V)).toEqual({ number: '0', unit: 'V' });
});

test('values side by side share their decimals but claim no fifth digit', () => {
  expect(aligned([148500, 150000, 151500], kOhm)).toEqual(['148.5', '150.0', '151.5']);
  expect(aligned([18513, 18700, 18887], kOhm)).toEqual(['18.51', '18.70', '18.89']);
  expect(aligned([3, 3.6, 4.2], V)).toEqual(['3.0', '3.6', '4.2']);
  expect(aligned([0, 1.13249], V, ['down', 'up'])).toEqual(['0', '1.133']);
});

test('a shared unit suits the largest value; a typed one stays while it can', () => {
  expect(unitFor([0.003061, 0.01139], W).text).toBe('mW');
  expect(unitFor([0, 0], W).text).toBe('W');
  expect(typedUnitFor([0.0625], W).text).toBe('W');
  expect(typedUnitFor([10e-9], F).text).toBe('nF');
  expect(unitFor([toSi(-10, degC), toSi(45, degC)], degC).text).toBe('°C');
});

describe('fixed', () => {
  test.each([
    [-0.0001, 1, 'down', '−0.1'],
    [0.0999, 1, 'down', '0.0'],
    [0.29, 2, 'down', '0.29'],
    [28.999999999999996, 1, 'down', '28.9'],
    [2.5, 0, 'nearest', '3'],
    [-2.5, 0, 'nearest', '−3'],
    [-2.4, 0, 'nearest', '−2'],
    [29.957, 0, 'up', '30'],
    [-0.5, 0, 'up', '0'],
  ] as const)('%d with %d decimals, %s', (value, decimals, round, text) => {
    expect(fixed(value, decimals, round)).toBe(text);
  });
  test('never passes the value on the side it must not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.integer({ min: 0, max: 6 }),
        (value, decimals) => {
          const read = (text: string) => Number(text.replace('−', '-'));
          expect(read(fixed(value, decimals, 'down'))).toBeLessThanOrEqual(value);
          expect(read(fixed(value, decimals, 'up'))).toBeGreaterThanOrEqual(value);
          expect(Math.abs(read(fixed(value, decimals)) - value)).toBeLessThanOrEqual(
            0.5 * 10 ** -decimals * (1 + 1e-9),
          );
        },
      ),
    );
  });
});

test('a failing margin never rounds to zero, a thin one never up to the target', () => {
  expect(percent(-1e-9)).toBe('−0.1');
  expect(percent(0.09999999999999998)).toBe('9.9');
  expect(percent(0.1)).toBe('10.0');
  expect(percent(0.345, 0, 'nearest')).toBe('35');
});

test('a figure as a formula', () => {
  expect(figureTex({ number: '−1.5', unit: 'V' })).toBe('-1.5\\,\\mathrm{V}');
  expect(figureTex({ number: '1.250×10⁻⁷', unit: '' })).toBe('1.250\\times 10^{-7}');
});
