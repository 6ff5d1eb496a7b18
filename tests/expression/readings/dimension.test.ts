import { describe, expect, test } from 'vitest';
import { parseExpression } from '../../../src/expression/parse.ts';
import { dimensionOf } from '../../../src/expression/readings/dimension.ts';
import { TextError } from '../../../src/quantity/text-problem.ts';
import { describeDimension, parseUnit } from '../../../src/quantity/units.ts';

const UNITS: Readonly<Record<string, string>> = {
  V: 'V',
  I: 'A',
  R_1: 'ohm',
  R_2: 'ohm',
  C: 'F',
  t: 's',
  T: 'degC',
  n: '1',
  P: 'W',
  A_s: 'mm²',
};
const lookup = (name: string) => (UNITS[name] ? parseUnit(UNITS[name]).dimension : undefined);
const of = (text: string) => {
  const dimension = dimensionOf(parseExpression(text), lookup);
  return dimension === 'truth' ? 'truth' : describeDimension(dimension);
};

test.each([
  ['V / R_1', 'current'],
  ['V * I', 'power'],
  ['V^2 / R_1', 'power'],
  ['R_1 * C', 'time'],
  ['1 / (2 * pi * R_1 * C)', 'frequency or angular speed'],
  ['sqrt(P * R_1)', 'voltage'],
  ['(V * V)^0.5', 'voltage'],
  ['V^(1/2) * V^(3 - 1.5)', 'squared voltage'],
  ['2^n', 'pure number'],
  ['exp(-t / (R_1 * C))', 'pure number'],
  ['parallel(R_1, R_2)', 'resistance'],
  ['share(R_1, R_2)', 'pure number'],
  ['hypot(V, 10 mV)', 'voltage'],
  ['max(V, 3 V, 10 mV)', 'voltage'],
  ['atan2(R_1, R_2)', 'pure number'],
  ['if(V > 3 V, I, 2 A)', 'current'],
  ['interp(T, 25 degC, 1 ohm, 100 degC, 1.4 ohm)', 'resistance'],
  ['T - 25 degC', 'temperature'],
  ['V < 10 mV', 'truth'],
  ['and(V < 10 mV, not(I > 1 A))', 'truth'],
  ['square(V) / R_2', 'power'],
  ['-V', 'voltage'],
  ['abs(I)', 'current'],
  ['floor(V / 1 V)', 'pure number'],
])('%s is a %s', (text, kind) => {
  expect(of(text)).toBe(kind);
});

describe('sides that disagree are named, and the place is that of the side at fault', () => {
  test.each<[text: string, at: string, words: string]>([
    ['V + I', 'I', '`I`, a current; expected a voltage, as `V` is.'],
    [
      'V * 2 - R_1 * I * 3 + (I + 1 A)',
      '(I + 1 A)',
      '`I + 1 A`, a current; expected a voltage, as `V * 2 - R_1 * I * 3` is.',
    ],
    ['V < 3 A', '3 A', '`3 A`, a current; expected a voltage, as `V` is.'],
    ['min(V, 1 V, I)', 'I', '`I`, a current; expected a voltage, as `V` is.'],
    [
      'exp(t)',
      't',
      '`t`, a time; expected a pure number, which is all that exp takes. Divide it by a quantity of its own kind first.',
    ],
    [
      'V^n',
      'n',
      '`n`, which is not a plain number; expected an exponent such as 2, because `V`, a voltage, has a unit.',
    ],
    [
      '2^V',
      'V',
      '`V`, a voltage; expected a pure number, which is all that an exponent takes. Divide it by a quantity of its own kind first.',
    ],
    ['if(V, 1, 2)', 'V', '`V`, a voltage; expected a comparison such as a < b.'],
    [
      '(V < 1 V) + 1',
      '(V < 1 V)',
      '`V < 1 V`, a truth (the outcome of a comparison); expected a quantity. A comparison gives a truth; if(condition, a, b) makes a quantity of it.',
    ],
    ['if(V < 1 V, V, I)', 'I', '`I`, a current; expected a voltage, as `V` is.'],
    ['not(V)', 'V', '`V`, a voltage; expected a comparison such as a < b.'],
    ['interp(T, 25 degC, 1, 1 V, 2)', '1 V', '`1 V`, a voltage; expected a temperature, as `T` is.'],
    ['interp(T, 25 degC, 1, 80 degC, 2 V)', '2 V', '`2 V`, a voltage; expected a pure number, as `1` is.'],
    ['interp(n, 2, 1, 1, 2)', '1', '`1`; expected an x above `2`.'],
    ['interp(n, n, 1, 3, 2)', 'n', '`n`, a pure number; expected a plain number for the x of a point.'],
    ['interp(n, 1, 1, 3, 2, 4)', '4', '`4` without its y; expected pairs x, y.'],
    ['V * I + A_s * V * C', 'A_s * V * C', '`A_s * V * C`, a quantity in m²·s·A; expected a power, as `V * I` is.'],
    ['V + foo', 'foo', 'the name `foo`; expected a symbol that is defined.'],
  ])('%s', (text, at, words) => {
    try {
      dimensionOf(parseExpression(text), lookup);
    } catch (error) {
      if (!(error instanceof TextError)) throw error;
      const { start, end, found, expected, hint } = error.problem;
      expect(text.slice(start, end)).toBe(at);
      expect(`${found}; expected ${expected}.${hint ? ` ${hint}` : ''}`).toBe(words);
      return;
    }
    expect.fail('nothing was refused');
  });
});
