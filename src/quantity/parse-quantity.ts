import { lex, longestText } from './lex.ts';
import type { Quantity } from './quantity.ts';
import { quantityProblems } from './quantity-problems.ts';
import { type Body, readMeasured, readPart, readRange, readTriple } from './read-forms.ts';
import { type Measure, readMeasure } from './read-measure.ts';
import type { Source } from './read-unit.ts';

export { looksLikeQuantity } from './looks-like-quantity.ts';

/**
 * Reads a quantity as an engineer types it. One of
 * - `number unit` and, in any order, a tolerance (`±1 %`, `+80 % -20 %`, `±5 mV`), a drift (`±100 ppm/K`, `±0.5 uV/K`),
 *   an ageing (`age ±0.5 %`, `age -20 %`) and a distribution (`normal`, `uniform`, `triangular`; without, normal)
 * - `min / typ / max unit`, data-sheet limits (triangular unless said)
 * - `mean sd s`, a measured spread
 * - `a to b typ c`, a range to endure; without `typ` its middle
 *
 * A number without a unit takes that of the next one that has one, or else of the last before it. Percent and ppm are
 * shares of the value, a unit of the value is a step. `90 % ±2 %` is refused, as it can be read both ways; of a pure
 * number that is 0, such as a gain error, `±1 %` and `±10 ppm/K` are steps.
 * @throws TextError with the offsets of what is wrong
 * @example parseQuantity('10 kohm ±1 %') // { form: 'tolerance', min: 9900, typ: 10000, max: 10100, … }
 */
export function parseQuantity(text: string): Quantity {
  if (text.length > longestText) throw quantityProblems.tooLong(text, longestText);
  const source = { text, tokens: lex(text) };
  const mean = source.tokens[0]?.text === 'mean';
  const first = readMeasure(source, mean ? 1 : 0, 'such as 10 or 3.3 V');
  const next = source.tokens[first.next];
  if (mean && next?.text !== 'sd')
    throw quantityProblems.noDeviation(text, next ?? { start: text.length, end: text.length });
  const read = readers.get(next?.text ?? '') ?? readPart;
  return { ...read(source, first), text: text.trim() };
}

/** What the word or sign behind the first number makes of it. */
const readers: ReadonlyMap<string, (source: Source, first: Measure) => Body> = new Map([
  ['to', readRange],
  ['/', readTriple],
  ['sd', readMeasured],
]);
