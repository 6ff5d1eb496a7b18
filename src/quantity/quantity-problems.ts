import { kindOf } from './coherent-unit.ts';
import { type Place, quoted, textError } from './place.ts';
import type { Unit } from './unit.ts';

/** What can be wrong with the whole of a quantity, and how it is said. `text` is all that was typed, `at` the place in it. */
export const quantityProblems = {
  tooLong: (text: string, most: number) =>
    textError('too-long', { start: most, end: text.length }, `${text.length} characters`, `at most ${most}`),

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

  noDeviation: (text: string, at: Place) =>
    textError(
      'missing-deviation',
      at,
      at.start === at.end ? 'nothing' : quoted(text, at),
      'the standard deviation after the mean, such as mean 2.1 mohm sd 0.05 mohm',
    ),

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
      'nothing after a range, or typ and its typical value',
      text[at.start] === ','
        ? 'Leave the comma out: a space is enough.'
        : 'A range is a condition to endure, not a part with a tolerance: widen its ends instead.',
    ),

  measuredWord: (text: string, at: Place) =>
    textError('measured-spread', at, quoted(text, at), 'nothing: a measured spread, mean sd s, is normal and whole'),

  tripleTolerance: (text: string, at: Place) =>
    textError('triple-tolerance', at, quoted(text, at), 'no tolerance: minimum / typical / maximum are the limits'),

  rangeSign: (text: string, at: Place) =>
    textError('range-sign', at, quoted(text, at), 'the word "to" between the ends of a range, such as 3.0 to 4.2 V'),

  wrongKind: (text: string, at: Place, is: Unit, wants: Unit) =>
    textError(
      'wrong-kind',
      at,
      `${quoted(text, at)}, which is ${kindOf(is.dimension)}`,
      `${kindOf(wants.dimension)} like the rest${wants.text ? `, in ${wants.text}` : ''}`,
    ),
};
