import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type FigureOptions, formatTyped, formatValue } from '../../src/quantity/figure.ts';
import { knownUnits } from '../../src/quantity/known-units.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { parseUnit } from '../../src/quantity/units.ts';

const printed = (si: number, unit: string, options?: FigureOptions): string => {
  const figure = formatValue(si, parseUnit(unit), options);
  return `${figure.number} ${figure.unit}`.trim();
};

describe('formatValue', () => {
  test.each([
    [4700, 'ohm', '4.700 kΩ'],
    [0.0047, 'V', '4.700 mV'],
    [1.5, 'V', '1.500 V'],
    [-1.5, 'V', '\u22121.500 V'],
    [1e-7, 'F', '100.0 nF'],
    [3.3e-5, 'kV', '33.00 µV'],
    [0.5, 'kg', '500.0 g'],
    [0.0254, 'cm', '25.40 mm'],
    [0.0353, 'N m', '35.30 mN·m'],
    [0, 'V', '0 V'],
    [-0, 'mV', '0 mV'],
    [0, '1', '0'],
    [999.94, 'V', '999.9 V'],
    [999.95, 'V', '1.000 kV'],
    [999.96, 'V', '1.000 kV'],
    [-0.99996, 'A', '\u22121.000 A'],
  ])('%d in %s is %s', (si, unit, text) => expect(printed(si, unit)).toBe(text));

  test('a unit without prefixes stays as typed', () => {
    expect(printed(298.15, 'degC')).toBe('25.00 °C');
    expect(printed(273.15, 'degC')).toBe('0 °C');
    expect(printed(-0.00005, '%')).toBe('\u22120.005000 %');
    expect(printed((25000 * Math.PI) / 30, 'rpm')).toBe('25000 rpm');
    expect(printed(1.2e8, 'V/us')).toBe('120.0 V/µs');
    expect(printed(0.0254, 'inch')).toBe('1.000 in');
    expect(printed(4096, 'count')).toBe('4096 count');
  });

  test('a power of ten where neither prefix nor plain digits reach', () => {
    expect(printed(1e-19, 'F')).toBe('1.000×10⁻⁴ fF');
    expect(printed(12345678, 's')).toBe('1.235×10⁷ s');
    expect(printed(86400, 's')).toBe('86400 s');
    expect(printed(2.2e-5, 'm^2')).toBe('2.200×10⁻⁵ m²');
    expect(printed(-1e6, '1')).toBe('\u22121.000×10⁶');
  });

  test('as many digits as asked for', () => {
    expect(printed(Math.PI, 'V', { digits: 1 })).toBe('3 V');
    expect(printed(9.6, 'V', { digits: 1 })).toBe('10 V');
    expect(printed(Math.PI, 'V', { digits: 9 })).toBe('3.14159265 V');
    expect(printed(0.1, 'V', { digits: 20 })).toBe('100.00000000000000000 mV');
  });

  test('decimal, not binary: halves go away from zero, and what was typed needs no rounding', () => {
    expect(printed(1.0005, 'V')).toBe('1.001 V');
    expect(printed(1.0045, 'V', { digits: 4 })).toBe('1.005 V');
    expect(printed(-1.0005, 'V')).toBe('\u22121.001 V');
    expect(printed(0.1, 'V', { round: 'up' })).toBe('100.0 mV');
    expect(printed(4.7e-6, 'F', { round: 'down' })).toBe('4.700 µF');
  });

  test('up and down are directions on the number line', () => {
    expect(printed(1.00001, 'V', { round: 'up' })).toBe('1.001 V');
    expect(printed(1.00001, 'V', { round: 'down' })).toBe('1.000 V');
    expect(printed(-1.00001, 'V', { round: 'up' })).toBe('\u22121.000 V');
    expect(printed(-1.00001, 'V', { round: 'down' })).toBe('\u22121.001 V');
    expect(printed(999.91, 'V', { round: 'up' })).toBe('1.000 kV');
    expect(printed(298.1501, 'degC', { round: 'up' })).toBe('25.01 °C');
  });

  test('without bound', () => {
    expect(printed(Number.POSITIVE_INFINITY, 'mV')).toBe('∞ mV');
    expect(printed(Number.NEGATIVE_INFINITY, 'degC')).toBe('\u2212∞ °C');
  });

  test('what is not a number is never printed', () => {
    expect(() => formatValue(Number.NaN, parseUnit('V'))).toThrow('A value in V is not a number.');
    expect(() => formatTyped(Number.NaN, parseUnit('1'))).toThrow('A value in plain numbers is not a number.');
  });
});

test('formatTyped keeps the prefix that was typed', () => {
  const typed = (si: number, unit: string) => formatTyped(si, parseUnit(unit));
  expect(typed(4700, 'ohm')).toEqual({ number: '4700', unit: 'Ω' });
  expect(typed(0.0047, 'V')).toEqual({ number: '0.004700', unit: 'V' });
  expect(typed(4700, 'Mohm')).toEqual({ number: '0.004700', unit: 'MΩ' });
  expect(typed(1234567, 'V')).toEqual({ number: '1.235×10⁶', unit: 'V' });
});

const unit = fc.constantFrom(...new Set(knownUnits.values()), ...['K/W', 'A²·s', 'mil²', 'nV/√Hz'].map(parseUnit));
const value = fc
  .tuple(fc.double({ min: 1, max: 10, noNaN: true }), fc.integer({ min: -18, max: 14 }), fc.boolean())
  .map(([mantissa, power, below]) => (below ? -1 : 1) * mantissa * 10 ** power);
const digits = fc.integer({ min: 1, max: 17 });
const readBack = ({ number, unit }: { number: string; unit: string }) => parseQuantity(`${number} ${unit}`).typ;

describe.each([
  ['formatValue', formatValue],
  ['formatTyped', formatTyped],
])('%s, whatever the value', (_, format) => {
  // Below absolute zero there is nothing to read back.
  const possible = fc.tuple(unit, value).filter(([unit, si]) => unit.offset === 0 || si > 0);

  test('rounded up it reads back as no less, rounded down as no more', () => {
    fc.assert(
      fc.property(possible, digits, ([unit, si], digits) => {
        expect(readBack(format(si, unit, { digits, round: 'up' }))).toBeGreaterThanOrEqual(si);
        fc.pre(unit.offset === 0 || si > 30); // rounding down may lead below absolute zero
        expect(readBack(format(si, unit, { digits, round: 'down' }))).toBeLessThanOrEqual(si);
      }),
      { numRuns: 2000 },
    );
  });

  test('it reads back within half a unit of the last digit', () => {
    fc.assert(
      fc.property(possible, digits, ([unit, si], digits) => {
        fc.pre(unit.offset === 0 || si > 30);
        const away = Math.abs(readBack(format(si, unit, { digits })) - si);
        // 1 part in 10^15 for the double itself.
        expect(away).toBeLessThanOrEqual((Math.abs(si) + unit.offset) * (5.0001 * 10 ** -digits + 1e-15));
      }),
      { numRuns: 2000 },
    );
  });

  test('it shows exactly the digits asked for, or zeros before the point', () => {
    fc.assert(
      fc.property(possible, digits, ([unit, si], digits) => {
        const { number } = format(si, unit, { digits });
        fc.pre(number !== '0');
        const figures = number
          .replace(/×10.*$/, '')
          .replace(/[\u2212.]/g, '')
          .replace(/^0+/, '');
        expect(figures.length).toBeGreaterThanOrEqual(digits);
        expect(figures.slice(digits)).toMatch(/^0*$/);
      }),
    );
  });
});

test('with a prefix, 1 to 999 stand before the point', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-14, max: 9e8, noNaN: true }), digits, (si, digits) => {
      const { number } = formatValue(si, parseUnit('V'), { digits });
      expect(Number(number)).toBeGreaterThanOrEqual(1);
      expect(Number(number)).toBeLessThan(1000);
    }),
  );
});
