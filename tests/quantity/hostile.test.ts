import fc from 'fast-check';
import { expect, test } from 'vitest';
import { looksLikeQuantity, parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { TextError } from '../../src/quantity/text-problem.ts';
import { parseUnit } from '../../src/quantity/units.ts';

const million = 1_000_000;

test.each([
  ['digits', '9'.repeat(million)],
  ['spaces', `1${' '.repeat(million)}V`],
  ['groups', `1${'\u2009000'.repeat(million / 4)}`],
  ['signs', `1 V ${'+'.repeat(million)}`],
  ['brackets', `1 W/${'('.repeat(million)}`],
  ['roots', `1 ${'√'.repeat(million)}Hz`],
  ['a word', `1 ${'k'.repeat(million)}`],
  ['powers', `1 m${'²'.repeat(million)}`],
])('a million %s are refused at once', (_, text) => {
  expect(() => parseQuantity(text)).toThrow(TextError);
  expect(() => parseUnit(text.slice(2))).toThrow(TextError);
  expect(looksLikeQuantity(text)).toBe(false);
});

test.each([
  ['digits', (n: number) => '9'.repeat(n)],
  ['spaces', (n: number) => `1${' '.repeat(n)}x`],
  ['groups', (n: number) => `1${'\u2009000'.repeat(n / 4)}x`],
  ['roots', (n: number) => `1 ${'√'.repeat(n)}`],
  ['exponents', (n: number) => `1e${'9'.repeat(n)}`],
  ['times ten', (n: number) => `1${'×10^9'.repeat(n / 5)}`],
  ['products', (n: number) => `1 ${'m '.repeat(n / 2)}x`],
  ['sides of ageing', (n: number) => `1 V ${'age +1 % '.repeat(n / 9)}`],
])('the longest text that is read, of %s, is refused too', (_, text) => {
  expect(() => parseQuantity(text(490))).toThrow(TextError);
});

test('whatever is typed is a quantity or a TextError that points into the text', () => {
  const piece = fc.constantFrom(
    ...['1', '2.5', '-', '+', '±', '/', '*', '^', '(', ')', '√', '%', 'ppm', 'V', 'kohm', 'degC', 'K', '°', 'C', 'x_1'],
    ...[
      'to',
      'typ',
      'sd',
      'mean',
      'age',
      'normal',
      ' ',
      ' ',
      ' ',
      ',',
      '.',
      '_',
      'e',
      '²',
      '⁻',
      '×10',
      '…',
      '１',
      '\u200b',
    ],
  );
  const text = fc.oneof(
    fc.array(piece, { maxLength: 12 }).map((pieces) => pieces.join('')),
    fc.string({ unit: 'binary' }),
  );
  fc.assert(
    fc.property(text, (typed) => {
      try {
        const { min, typ, max } = parseQuantity(typed);
        expect(min).toBeLessThanOrEqual(typ);
        expect(typ).toBeLessThanOrEqual(max);
      } catch (error) {
        if (!(error instanceof TextError)) throw error;
        const { start, end, found, expected } = error.problem;
        expect(start).toBeGreaterThanOrEqual(0);
        expect(end).toBeGreaterThanOrEqual(start);
        expect(end).toBeLessThanOrEqual(typed.length);
        expect(found.length).toBeLessThan(120);
        expect(expected).not.toBe('');
      }
    }),
    { numRuns: 20_000 },
  );
});

test('ten thousand quantities are read in well under a second', () => {
  const texts = ['10 kohm ±1 % ±100 ppm/K age ±0.5 %', '4 / 5 / 6 uA', '3.0 V to 4.2 V typ 3.6 V', '35 W/(m K)'];
  const begun = performance.now();
  for (let i = 0; i < 2500; i++) for (const text of texts) parseQuantity(text);
  expect(performance.now() - begun).toBeLessThan(2000);
});
