import { type Place, quoted, textError } from './place.ts';

/** What can be wrong with a number, and how it is said. `text` is all that was typed, `at` the place in it. */
export const numberProblems = {
  missingNumber: (text: string, at: Place, where: string) =>
    textError(
      'missing-number',
      at,
      at.start === at.end ? 'nothing' : quoted(text, at),
      `a number ${where}`,
      text[at.start] === '–' ? 'A dash is not a minus sign: write - instead.' : undefined,
    ),

  digits: (text: string, at: Place) =>
    textError('number-range', at, `the number ${quoted(text, at)}`, 'a number of at most 40 characters'),

  size: (text: string, at: Place) =>
    textError('number-range', at, `the number ${quoted(text, at)}`, 'a number between 1e-100 and 1e100'),

  belowZeroKelvin: (text: string, at: Place) =>
    textError('below-zero-kelvin', at, quoted(text, at), 'a temperature above −273.15 °C'),

  decimalComma: (text: string, at: Place) => {
    const [whole, decimals] = text.slice(at.start, at.end).split(',') as [string, string];
    const readings = [
      ...(/^\d{3}(\.|$)/.test(decimals) ? [whole + decimals] : []),
      ...(decimals.includes('.') ? [] : [`${whole}.${decimals}`]),
    ];
    const hint = readings.length > 0 ? `Write ${readings.join(' or ')}.` : undefined;
    return textError('decimal-comma', at, `${quoted(text, at)} with a comma`, 'a point before the decimals', hint);
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
};
