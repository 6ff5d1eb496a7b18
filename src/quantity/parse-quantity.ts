import { lex, longestText } from './lex.ts';
import type { Quantity } from './quantity.ts';
import { quantityProblems } from './quantity-problems.ts';
import { readMeasured, readPart, readRange, readTriple } from './read-forms.ts';
import { readMeasure } from './read-measure.ts';

export { looksLikeQuantity } from './looks-like-quantity.ts';

/**
 * Reads a quantity as an engineer types it. One of
 * - `number unit` and, in any order, a tolerance (`±1 %`, `+80 % -20 %`, `±5 mV`), a drift (`±100 ppm/K`, `±0.5 uV/K`),
 *   an ageing (`age ±0.5 %`, `age -20 %`) and a distribution (`normal`, `uniform`, `triangular`; without, normal)
 * - `min / typ / max unit`, data-sheet limits (triangular unless said)
 * - `mean sd s`, a measured spread
 * - `a to b typ c`, a range to endure; without `typ` its middle
 *
 * A number without a unit takes that of the next one that has one. A percentage of a value in percent is refused,
 * as it can be read two ways.
 * @throws TextError with the offsets of what is wrong
 * @example parseQuantity('10 kohm ±1 %') // { form: 'tolerance', min: 9900, typ: 10000, max: 10100, … }
 */
export function parseQuantity(text: string): Quantity {
  if (text.length > longestText) throw quantityProblems.tooLong(text, longestText);
  const source = { text, tokens: lex(text) };
  const start = source.tokens[0]?.text === 'mean' ? 1 : 0;
  const first = readMeasure(source, start, 'such as 10 or 3.3 V');
  const next = source.tokens[first.next];
  const read =
    next?.text === 'to' ? readRange : next?.text === '/' ? readTriple : next?.text === 'sd' ? readMeasured : readPart;
  return { ...read(source, first), text: text.trim() };
}
