import { describe, expect, test } from 'vitest';
import { parseExpression } from '../../src/expression/parse.ts';
import { typeset } from '../../src/expression/readings/typeset.ts';
import { countsOf, verdictSentence } from '../../src/packet/margins.ts';
import { idTex, symbolLeaves } from '../../src/packet/symbols.ts';
import { specifiedAs, toleranceText } from '../../src/packet/tolerance.ts';
import { counted, grouped, inWords, sentence } from '../../src/packet/words.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';

const text = (printed: string): string => printed.replaceAll('\u00a0', ' ');

test('counts in sentences', () => {
  expect([inWords(0), inWords(12), inWords(13), grouped(100_000), grouped(9999)]).toEqual([
    'no',
    'twelve',
    '13',
    '100\u2009000',
    '9999',
  ]);
  expect([counted(1, 'check'), counted(2, 'check')]).toEqual(['one check', 'two checks']);
  expect(sentence(' hot parts age.. ')).toBe('Hot parts age.');
});

describe('the verdict on several checks, answer first', () => {
  const none = { pass: 0, marginal: 0, fail: 0, accepted: 0, 'not assessed': 0 };
  test.each([
    [{ pass: 1 }, 'The check holds with the margin asked for.'],
    [{ pass: 4 }, 'All four checks hold with the margin asked for.'],
    [{ marginal: 1 }, 'The check holds by less.'],
    [{ fail: 1 }, 'The check fails.'],
    [{ fail: 2 }, 'All two checks fail.'],
    [{ fail: 1, pass: 1 }, 'One of two checks fails. The other holds with the margin asked for.'],
    [
      { fail: 2, pass: 3, marginal: 1 },
      'Two of six checks fail. Of the others, three hold with the margin asked for and one holds by less.',
    ],
    [
      { pass: 52, marginal: 4, accepted: 1 },
      'No check fails. Of 57 checks, 52 hold with the margin asked for, four hold by less and one is an accepted deviation.',
    ],
    [
      { 'not assessed': 2, pass: 1 },
      'No check fails. Of three checks, one holds with the margin asked for and two could not be assessed.',
    ],
    [{}, 'Nothing is checked here.'],
  ])('%o', (counts, said) => {
    expect(verdictSentence({ ...none, ...counts }, 0.1)).toBe(said);
  });
  test('counts each verdict', () => {
    expect(countsOf([{ verdict: 'pass' }, { verdict: 'fail' }, { verdict: 'pass' }])).toEqual({
      ...none,
      pass: 2,
      fail: 1,
    });
  });
});

describe('tolerances in the trade\u2019s short hand', () => {
  test.each([
    ['10 kohm ±1 % ±100 ppm/K age ±0.5 %', '±1 %, ±100 ppm/K, age ±0.5 %', '10 kΩ ±1 %, ±100 ppm/K, age ±0.5 %'],
    ['100 uF +80 % -20 %', '+80 % −20 %', '100 µF +80 % −20 %'],
    ['0 V ±5 mV', '±5 mV', '0 V ±5 mV'],
    ['4 / 5 / 6 uA', 'triple', '4 / 5 / 6 µA'],
    ['2.1 mohm sd 0.05 mohm', 'sd 0.05 mΩ', '2.1 mΩ sd 0.05 mΩ'],
    ['10 nF ±10 % uniform', '±10 % uniform', '10 nF ±10 % uniform'],
    ['10 nF ±10 % age -20 %', '±10 %, age −20 %', '10 nF ±10 %, age −20 %'],
    ['25 degC ±3 K', '±3 K', '25 °C ±3 K'],
  ])('%s', (typed, tolerance, specified) => {
    const value = { kind: 'part' as const, quantity: parseQuantity(typed) };
    expect(text(toleranceText(value))).toBe(tolerance);
    expect(text(specifiedAs(value))).toBe(specified);
  });
  test('a range to endure, and a value that is the same everywhere', () => {
    expect(text(specifiedAs({ kind: 'condition', quantity: parseQuantity('3.0 V to 4.2 V typ 3.6 V') }))).toBe(
      '3.0 to 4.2 V, typ 3.6',
    );
    expect(text(specifiedAs({ kind: 'exact', quantity: parseQuantity('62.5 mW') }))).toBe('62.5 mW');
    expect(toleranceText({ kind: 'exact', quantity: parseQuantity('62.5 mW') })).toBe('exact');
  });
});

describe('symbols', () => {
  test.each([
    ['pack.V_bat', 'V_{\\mathrm{bat}}'],
    ['pack.dV_sag', '\\Delta V_{\\mathrm{sag}}'],
    ['x.d', 'd'],
    ['derating.resistor_power', 'k_{\\mathrm{resistor,power}}'],
    ['board.heat', 'P_{\\mathrm{board}}'],
    ['board.load.bus', 'I_{\\mathrm{load,bus}}'],
    ['sense.V_PER_COUNT', '\\mathrm{V\\_PER\\_COUNT}'],
  ])('%s', (id, tex) => {
    expect(idTex(id)).toBe(tex);
  });
  test('two circuits with the same symbol in one equation are told apart', () => {
    const tree = parseExpression('a.R_top + b.R_top + c.V_in');
    expect(typeset(tree, symbolLeaves(tree, 'a'))).toBe('R_{\\mathrm{top}} + R_{\\mathrm{top},b} + V_{\\mathrm{in}}');
  });
});
