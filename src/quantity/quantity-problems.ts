import { coherentUnit, describeDimension } from './coherent-unit.ts';
import type { Dimension } from './dimension.ts';
import { nearest } from './nearest.ts';
import { type Place, quoted, textError, withArticle } from './place.ts';
import type { Unit } from './unit.ts';

const terms = 'a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution';

/** What can be wrong with a quantity, and how it is said. `text` is all that was typed, `at` the place in it. */
export const quantityProblems = {
  missingNumber: (text: string, at: Place, where: string) =>
    textError(
      'missing-number',
      at,
      at.start === at.end ? 'nothing' : quoted(text, at),
      `a number ${where}`,
      text[at.start] === '–' ? 'A dash is not a minus sign: write - instead.' : undefined,
    ),

  tooLong: (text: string, most: number) =>
    textError('too-long', { start: most, end: text.length }, `${text.length} characters`, `at most ${most}`),

  digits: (text: string, at: Place) =>
    textError('number-range', at, `the number ${quoted(text, at)}`, 'a number of at most 40 characters'),

  size: (text: string, at: Place) =>
    textError('number-range', at, `the number ${quoted(text, at)}`, 'a number between 1e-300 and 1e300'),

  decimalComma: (text: string, at: Place) => {
    const [whole, decimals] = text.slice(at.start, at.end).split(',') as [string, string];
    const written = `${whole}.${decimals}`;
    const thousands = /^\d{3}$/.test(decimals) ? `Write ${whole}${decimals} or ${written}.` : `Write ${written}.`;
    return textError('decimal-comma', at, `${quoted(text, at)} with a comma`, 'a point before the decimals', thousands);
  },

  grouping: (text: string, at: Place) => {
    const joined = text.slice(at.start, at.end).replace(/[^\d.]/g, '');
    return textError('digit-groups', at, quoted(text, at), 'digits without anything between', `Write ${joined}.`);
  },

  fullWidth: (text: string, at: Place) => {
    const plain = [...text.slice(at.start, at.end)].map((c) => String.fromCharCode(c.charCodeAt(0) - 0xfee0)).join('');
    return textError('full-width', at, `${quoted(text, at)} in full-width digits`, 'plain digits', `Write ${plain}.`);
  },

  noDecimals: (text: string, at: Place) =>
    textError('missing-decimals', at, quoted(text, at), 'digits after the point, or no point'),

  letterForPoint: (text: string, at: Place, written: string) =>
    textError('letter-for-point', at, quoted(text, at), `a number, a space and a unit`, `Write ${written}.`),

  unexpected: (text: string, at: Place) =>
    textError('unexpected', at, quoted(text, at), terms, unexpectedHint(text.slice(at.start, at.end))),

  looseNumber: (text: string, at: Place) =>
    textError('loose-number', at, quoted(text, at), terms, `Did you mean ±${text.slice(at.start, at.end)}?`),

  unknownWord: (text: string, at: Place, words: Iterable<string>) => {
    const [close] = nearest(text.slice(at.start, at.end), words);
    return textError('unknown-word', at, `the word ${quoted(text, at)}`, terms, close && `Did you mean ${close}?`);
  },

  rangeSign: (text: string, at: Place) =>
    textError('range-sign', at, quoted(text, at), 'the word "to" between the ends of a range, such as 3.0 to 4.2 V'),

  wrongKind: (text: string, at: Place, is: Dimension, wants: Dimension, unit: Unit) =>
    textError(
      'wrong-kind',
      at,
      `${quoted(text, at)}, which is ${kindOf(is)}`,
      `${kindOf(wants)} like the rest, in ${unit.text || coherentUnit(wants).text || 'plain numbers'}`,
    ),

  twoNumbers: (text: string, at: Place) =>
    textError(
      'triple',
      at,
      quoted(text, at),
      'three numbers, minimum / typical / maximum, such as 4 / 5 / 6 uA',
      'For a range to endure write 4 to 6 uA.',
    ),

  reversed: (text: string, at: Place, order: string, written: string) =>
    textError('reversed', at, quoted(text, at), order, `Did you mean ${written}?`),

  outside: (text: string, at: Place) =>
    textError('outside-range', at, `the typical value ${quoted(text, at)}`, 'a typical value between the two ends'),

  deviation: (text: string, at: Place) =>
    textError(
      'bad-deviation',
      at,
      `the standard deviation ${quoted(text, at)}`,
      'a deviation above 0, such as sd 5 mV',
    ),

  rangeTerm: (text: string, at: Place) =>
    textError(
      'range-with-spread',
      at,
      quoted(text, at),
      'nothing after a range',
      'A range is a condition to endure, not a part with a tolerance: widen its ends instead.',
    ),

  twice: (text: string, at: Place, what: string) =>
    textError('said-twice', at, `a second ${what}, ${quoted(text, at)}`, `one ${what}`),

  oneSided: (text: string, at: Place, both: string) =>
    textError(
      'one-sided',
      at,
      `${quoted(text, at)} with one side only`,
      `both sides, such as ${both}`,
      'In an expression, put a space on both sides of + or -.',
    ),

  sameSign: (text: string, at: Place) =>
    textError('same-sign', at, `${quoted(text, at)} with one sign twice`, 'one side with + and one with -'),

  signed: (text: string, at: Place) =>
    textError('double-sign', at, quoted(text, at), 'a number without a sign after ±', 'Write +2 % -1 % for two sides.'),

  toleranceUnit: (text: string, at: Place, unit: Unit) =>
    textError(
      'missing-unit',
      at,
      `${quoted(text, at)} without a unit`,
      unit.text === '%' || unit.text === 'ppm' ? shares(unit) : `a tolerance in ${unit.text} or %`,
      `Write ${text.slice(at.start, at.end)} ${unit.text} or ${text.slice(at.start, at.end)} %.`,
    ),

  toleranceKind: (text: string, at: Place, is: Dimension, base: Unit) =>
    textError(
      'tolerance-unit',
      at,
      `${quoted(text, at)}, which is ${kindOf(is)}`,
      `a tolerance in ${base.text ? `${base.text} or ` : ''}%, or a drift in ppm/K`,
    ),

  shareOfShare: (text: string, at: Place, unit: Unit) =>
    textError(
      'share-of-share',
      at,
      `${quoted(text, at)} on a value in ${unit.text}, which can be read two ways`,
      shares(unit),
    ),

  shareOfTemperature: (text: string, at: Place) =>
    textError(
      'share-of-temperature',
      at,
      `${quoted(text, at)} of a temperature in °C`,
      'a tolerance in kelvin, such as ±2 K',
      'The zero of the Celsius scale is arbitrary, so a share of it means nothing.',
    ),

  shareOfZero: (text: string, at: Place, unit: Unit) =>
    textError(
      'share-of-zero',
      at,
      `${quoted(text, at)} of 0, which is no spread`,
      unit.text ? `the spread in ${unit.text}, such as ±1 ${unit.text}` : 'the spread as a number, such as ±0.1',
    ),

  driftOfZero: (text: string, at: Place, unit: Unit) =>
    textError(
      'share-of-zero',
      at,
      `${quoted(text, at)} of 0, which is no drift`,
      `the drift in ${unit.text || '1'}/K${unit.text ? `, such as ±1 ${unit.text}/K` : ''}`,
    ),

  overWhole: (text: string, at: Place) =>
    textError(
      'sign-change',
      at,
      `${quoted(text, at)}, which turns the value's sign`,
      'at most -100 %',
      'If the value may change sign, give the spread in its own unit.',
    ),

  ageingUnit: (text: string, at: Place) =>
    textError('ageing-unit', at, quoted(text, at), 'ageing as a share of the value, such as age ±0.5 %'),

  nothingSpread: (text: string, at: Place) =>
    textError(
      'nothing-spread',
      at,
      `the distribution ${quoted(text, at)}`,
      'a distribution only where there is a tolerance, such as 10 kohm ±1 % uniform',
    ),

  measuredWord: (text: string, at: Place) =>
    textError('measured-spread', at, quoted(text, at), 'nothing: a measured spread, mean sd s, is normal and whole'),

  tripleTolerance: (text: string, at: Place) =>
    textError('triple-tolerance', at, quoted(text, at), 'no tolerance: minimum / typical / maximum are the limits'),
};

const kindOf = (dimension: Dimension): string => withArticle(describeDimension(dimension));

const shares = (unit: Unit): string =>
  unit.text === '%'
    ? '0.90 ±2 % for a share of the value, or 88 / 90 / 92 % for points'
    : '50e-6 ±10 % for a share of the value, or 45 / 50 / 55 ppm for limits';

function unexpectedHint(typed: string): string | undefined {
  if (typed.startsWith(',')) return 'Leave the comma out: a space is enough.';
  if (/^[*/^(]/.test(typed)) return 'In an expression, put a space on both sides of * and /.';
  const code = typed.codePointAt(0) ?? 0;
  if (code < 0x20 || /^\p{C}/u.test(typed))
    return `It is the invisible character U+${code.toString(16).padStart(4, '0').toUpperCase()}.`;
  return undefined;
}
