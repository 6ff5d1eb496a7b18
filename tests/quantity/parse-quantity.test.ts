import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';

/** What is said, without the text and with units by their print. */
const said = (typed: string) => {
  const { text, unit, typedIn: _, ...rest } = parseQuantity(typed);
  expect(text).toBe(typed.trim());
  return { unit: unit.text, ...rest };
};
const limits = (typed: string) => {
  const { min, typ, max } = parseQuantity(typed);
  return [min, typ, max];
};
const exact = (unit: string, typ: number) => ({ form: 'number', unit, min: typ, typ, max: typ });

describe('a number', () => {
  test.each([
    ['10', '', 10],
    ['0', '', 0],
    ['-0.5', '', -0.5],
    ['.5 V', 'V', 0.5],
    ['3.3 V', 'V', 3.3],
    ['4.7 uF', 'µF', 4.7e-6],
    ['4.7\u00a0\u00b5F', 'µF', 4.7e-6],
    ['4.7\u2009\u03bcF', 'µF', 4.7e-6],
    ['10kohm', 'kΩ', 10000],
    ['10 k\u2126', 'kΩ', 10000],
    ['0.1 mohm', 'mΩ', 1e-4],
    ['5%', '%', 0.05],
    ['20 ppm', 'ppm', 20e-6],
    ['10e3 V', 'V', 10000],
    ['1E-3 V', 'V', 0.001],
    ['1.2×10⁻⁵ F', 'F', 1.2e-5],
    ['1.2 × 10^3 V', 'V', 1200],
    ['12\u202f000 rpm', 'rpm', 400 * Math.PI],
    ['-40 degC', '°C', 233.15],
    ['\u221240 °C', '°C', 233.15],
    ['25.3 ℃', '°C', 298.45],
    ['0.0039 1/K', '1/K', 0.0039],
    ['35 W/(m K)', 'W/(m·K)', 35],
    ['1.3 A²s', 'A²·s', 1.3],
    ['6 dB', 'dB', 6],
    ['10 min', 'min', 600],
    ['  3 V  ', 'V', 3],
  ])('%j', (typed, unit, value) => expect(said(typed)).toEqual(exact(unit, value)));
});

describe('a tolerance', () => {
  const part = { form: 'tolerance', distribution: 'normal' };
  test.each(['10 nF ±10 %', '10 nF +/-10%', '10nF +/- 10 %', '10 nF ± 10%', '10 nF +- 10 %', '10 nF +10 -10 %'])(
    '%s',
    (typed) => expect(said(typed)).toEqual({ ...part, unit: 'nF', min: 9e-9, typ: 1e-8, max: 1.1e-8 }),
  );
  test.each([
    '100 uF +80 % -20 %',
    '100 uF -20 % +80 %',
    '100 uF +80/-20 %',
    '100 uF + 80 % - 20 %',
    '100 uF +80 -20 %',
  ])('%s', (typed) => expect(limits(typed)).toEqual([80e-6, 100e-6, 180e-6]));
  test('limits are exact in decimal', () => {
    expect(limits('150 kohm ±1 %')).toEqual([148500, 150000, 151500]);
    expect(limits('3.3 V ±2 %')).toEqual([3.234, 3.3, 3.366]);
    expect(limits('0.1 V ±0.01 V')).toEqual([0.09, 0.1, 0.11]);
    expect(limits('1 V +1 % -1000 ppm')).toEqual([0.999, 1, 1.01]);
  });
  test('a step in a unit of the value, of a temperature in kelvin', () => {
    expect(limits('0 V ±5 mV')).toEqual([-0.005, 0, 0.005]);
    expect(limits('25 degC ±2 K')).toEqual([296.15, 298.15, 300.15]);
    expect(limits('25 degC ±2 degC')).toEqual([296.15, 298.15, 300.15]);
    expect(limits('298 K ±2 degC')).toEqual([296, 298, 300]);
    expect(limits('10 ±1')).toEqual([9, 10, 11]);
    expect(limits('30 rpm ±1 rpm')[1]).toBe(Math.PI);
  });
  test('a share scales the magnitude', () => {
    expect(limits('-5 V +10 % -1 %')).toEqual([-5.5, -5, -4.95]);
    expect(limits('1 uA +200 % -100 %')).toEqual([0, 1e-6, 3e-6]);
  });
  test('a coefficient per kelvin has a tolerance in its own unit, not a drift', () => {
    expect(limits('0.0039 1/K ±100 ppm/K')).toEqual([0.0038, 0.0039, 0.004]);
  });
  test('of a number that is 0, percent and ppm are steps', () => {
    expect(limits('0 ±1 %')).toEqual([-0.01, 0, 0.01]);
    expect(limits('0 % ±1 %')).toEqual([-0.01, 0, 0.01]);
    expect(said('0 % ±1 % ±10 ppm/K')).toMatchObject({ driftAbsolute: { min: -1e-5, max: 1e-5 } });
    expect(said('0 % ±1 % ±10 ppm/K')).not.toHaveProperty('drift');
  });
  test.each(['uniform', 'normal', 'triangular'])('%s', (distribution) => {
    expect(said(`1 V ±1 % ${distribution}`)).toMatchObject({ distribution });
    expect(said(`1 V ${distribution} ±1 %`)).toMatchObject({ distribution });
  });
});

describe('drift and ageing', () => {
  test.each(['100 ppm/K', '100 ppm/degC', '100 ppm/°C', '0.01 %/K', '1e-4 1/K', '1e-4 /K'])('±%s', (drift) =>
    expect(said(`10 kohm ±${drift}`)).toEqual({
      ...{ form: 'tolerance', unit: 'kΩ', min: 10000, typ: 10000, max: 10000, distribution: 'normal' },
      drift: { min: -1e-4, max: 1e-4 },
    }),
  );
  test('two sides', () => {
    expect(said('10 kohm +50 -20 ppm/K')).toMatchObject({ drift: { min: -20e-6, max: 50e-6 } });
    expect(said('10 kohm -20 ppm/K +50 ppm/K')).toMatchObject({ drift: { min: -20e-6, max: 50e-6 } });
  });
  test('in the unit of the value', () => {
    expect(said('0 V ±5 mV ±0.5 uV/K')).toMatchObject({ min: -0.005, driftAbsolute: { min: -5e-7, max: 5e-7 } });
    expect(said('0 A +1 -2 pA/K')).toMatchObject({ driftAbsolute: { min: -2e-12, max: 1e-12 } });
    expect(said('2.5 V ±50 uV/degC')).toMatchObject({ driftAbsolute: { min: -5e-5, max: 5e-5 } });
  });
  test.each([
    ['age ±0.5 %', { min: -0.005, max: 0.005 }],
    ['age -20 %', { min: -0.2, max: 0 }],
    ['age +0 % -20 %', { min: -0.2, max: 0 }],
    ['age +5 % -20 %', { min: -0.2, max: 0.05 }],
    ['age +1000 ppm', { min: 0, max: 0.001 }],
  ])('%s', (typed, ageing) => expect(said(`100 uF ${typed}`)).toMatchObject({ ageing }));

  test('in any order', () => {
    const whole = said('10 kohm ±1 % ±100 ppm/K age ±0.5 % uniform');
    for (const other of [
      '10 kohm uniform age ±0.5 % ±100 ppm/K ±1 %',
      '10 kohm age ±0.5 % ±1 % uniform ±100 ppm/K',
      '10 kohm ±100 ppm/K ±1 % age ±0.5 % uniform',
    ])
      expect(said(other)).toEqual(whole);
  });
  test('one side of ageing leaves the pair behind it whole', () => {
    const whole = said('1 F +80 % -10 % age -20 %');
    expect(said('1 F age -20 % +80 % -10 %')).toEqual(whole);
    expect(said('1 F age +0 % -20 % +80 % -10 %')).toEqual(whole);
  });
});

describe('data-sheet limits', () => {
  const three = { form: 'triple', unit: 'µA', min: 4e-6, typ: 5e-6, max: 6e-6, distribution: 'triangular' };
  test.each(['4 / 5 / 6 uA', '4/5/6 uA', '4/5/6uA', '4 uA / 5 uA / 6 uA', '4000 nA / 5 uA / 6 uA'])('%s', (typed) =>
    expect(said(typed)).toEqual(three),
  );
  test('with a distribution, a drift and ageing', () => {
    expect(said('4 / 5 / 6 uA uniform ±100 ppm/K age -1 %')).toEqual({
      ...three,
      distribution: 'uniform',
      drift: { min: -1e-4, max: 1e-4 },
      ageing: { min: -0.01, max: 0 },
    });
  });
  test('of either sign, of plain numbers, of temperatures', () => {
    expect(limits('-5 / -4 / -3 mV')).toEqual([-0.005, -0.004, -0.003]);
    expect(limits('95 / 100 / 105')).toEqual([95, 100, 105]);
    expect(limits('150 / 165 / 180 degC')).toEqual([423.15, 438.15, 453.15]);
  });
});

describe('a measured spread', () => {
  test.each(['2.1 mohm sd 0.05 mohm', 'mean 2.1 mohm sd 0.05 mohm', '2.1 sd 0.05 mohm', '2.1 mohm sd 50 uohm'])(
    '%s reaches four deviations either side',
    (typed) => expect(said(typed)).toMatchObject({ form: 'measured', min: 0.0019, typ: 0.0021, max: 0.0023, sd: 5e-5 }),
  );
  test('as a share of the mean, and with a drift', () => {
    expect(said('-2 V sd 1 % ±10 ppm/K')).toMatchObject({ sd: 0.02, min: -2.08, max: -1.92, drift: { max: 1e-5 } });
  });
  test('of a temperature in kelvin', () => expect(said('25 degC sd 2 degC')).toMatchObject({ sd: 2, min: 290.15 }));
  test('it has no distribution word', () => expect(said('1 V sd 1 mV')).not.toHaveProperty('distribution'));
});

describe('a range to endure', () => {
  const volts = { form: 'range', unit: 'V', min: 3, typ: 3.6, max: 4.2 };
  test.each([
    '3.0 V to 4.2 V typ 3.6 V',
    '3.0 to 4.2 V typ 3.6',
    '3.0 to 4.2 typ 3.6 V',
    '3.0 V to 4.2 typ 3.6',
    '3 to 4.2 V',
    '3000 mV to 4.2 V',
  ])('%s', (typed) => expect(said(typed)).toEqual(volts));
  test('of temperatures', () => {
    expect(limits('-10 degC to 45 degC typ 25 degC')).toEqual([263.15, 298.15, 318.15]);
    expect(limits('-40 to 85 degC')).toEqual([233.15, 295.65, 358.15]);
  });
});

test('a number without a unit takes the next one, or else the last', () => {
  expect(limits('5 to 70 mA typ 20')).toEqual([0.005, 0.02, 0.07]);
  expect(limits('1 / 2 V / 3')).toEqual([1, 2, 3]);
});
