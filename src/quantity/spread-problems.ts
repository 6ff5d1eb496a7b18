import { kindOf } from './coherent-unit.ts';
import type { Dimension } from './dimension.ts';
import { nearest } from './nearest.ts';
import { type Place, quoted, textError } from './place.ts';
import type { Unit } from './unit.ts';

const terms = 'a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution';

/** What can be wrong with what follows a value: its tolerance, drift, ageing and distribution. */
export const spreadProblems = {
  unexpected: (text: string, at: Place) =>
    textError('unexpected', at, quoted(text, at), terms, unexpectedHint(text.slice(at.start, at.end))),

  looseNumber: (text: string, at: Place) =>
    textError('loose-number', at, quoted(text, at), terms, `Did you mean ±${text.slice(at.start, at.end)}?`),

  misplaced: (text: string, at: Place) => {
    const word = text.slice(at.start, at.end);
    return textError('misplaced-word', at, `the word ${quoted(text, at)} out of its place`, terms, places.get(word));
  },

  unknownWord: (text: string, at: Place, words: Iterable<string>) => {
    const [close] = nearest(text.slice(at.start, at.end), words);
    return textError('unknown-word', at, `the word ${quoted(text, at)}`, terms, close && `Did you mean ${close}?`);
  },

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

  toleranceUnit: (text: string, at: Place, unit: Unit) => {
    const typed = text.slice(at.start, at.end);
    const found = `${quoted(text, at)} without a unit`;
    if (unit.text === '%' || unit.text === 'ppm') {
      return textError('missing-unit', at, found, `minimum / typical / maximum, such as 88 / 90 / 92 ${unit.text}`);
    }
    const hint = `Write ${typed} ${unit.text} or ${typed} %.`;
    return textError('missing-unit', at, found, `a tolerance in ${unit.text} or %`, hint);
  },

  toleranceKind: (text: string, at: Place, is: Dimension, base: Unit) =>
    textError(
      'tolerance-unit',
      at,
      `${quoted(text, at)}, which is ${kindOf(is)}`,
      `a tolerance in ${base.text ? `${base.text} or ` : ''}%, or a drift in ppm/K`,
      base.text === 'C' ? 'C is the coulomb: write a temperature in degC.' : undefined,
    ),

  /** `share` and `steps` are the two readings, written so that neither can be mistaken. */
  shareOfShare: (text: string, at: Place, unit: Unit, share: string, steps: string) =>
    textError(
      'share-of-share',
      at,
      `${quoted(text, at)} on a value in ${unit.text}, which can be read two ways`,
      `${share} for a share of the value, or ${steps} for limits`,
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

  ageingSign: (text: string, at: Place) =>
    textError(
      'missing-sign',
      at,
      at.start === at.end ? 'nothing' : quoted(text, at),
      'a change with its sign after age, such as age ±0.5 % or age -20 %',
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
};

/** Where the words belong that a quantity knows. */
const places: ReadonlyMap<string, string> = new Map([
  ['to', 'A range begins with its two ends: 3.0 to 4.2 V.'],
  ['typ', 'It belongs behind a range: 3.0 to 4.2 V typ 3.6 V.'],
  ['sd', 'It belongs right behind the mean: 2.1 mohm sd 0.05 mohm.'],
  ['mean', 'It belongs in front: mean 2.1 mohm sd 0.05 mohm.'],
]);

function unexpectedHint(typed: string): string | undefined {
  if (typed.startsWith(',')) return 'Leave the comma out: a space is enough.';
  if (/^[*/^]\S/.test(typed)) return 'In an expression, put a space on both sides of * and /.';
  const code = typed.codePointAt(0) ?? 0;
  if (code < 0x20 || /^\p{C}/u.test(typed))
    return `It is the invisible character U+${code.toString(16).padStart(4, '0').toUpperCase()}.`;
  return undefined;
}
