import type { Interval } from '../expression/interval.ts';
import { same } from '../quantity/dimension.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import { TextError } from '../quantity/text-problem.ts';
import type { Unit } from '../quantity/unit.ts';
import { describeDimension } from '../quantity/units.ts';

const YES = new Set(['yes', 'true']);
const NO = new Set(['no', 'false']);
const UNKNOWN = 'unknown';
const INFINITE = 'infinite';

/** What a spec states about a fact: yes, no, or in so many words that it is not known. Throws a TextError. */
export function readFlag(text: string): boolean | undefined {
  const word = text.trim();
  if (YES.has(word)) return true;
  if (NO.has(word)) return false;
  if (word === UNKNOWN) return undefined;
  throw new TextError({
    code: 'not-one-of',
    start: 0,
    end: text.length,
    found: `\`${text}\``,
    expected: '`yes`, `no` or `unknown`',
  });
}

/**
 * What a spec states about a hazard quantity, from its least to its most, SI base units; undefined for `unknown`.
 * Drift and ageing are refused: a fact follows no temperature. Throws a TextError.
 * @example readNumber('60 s', s) // { lo: 60, hi: 60, certain: true }
 * @example readNumber('infinite', s) // { lo: Infinity, hi: Infinity, certain: true }
 */
export function readNumber(text: string, unit: Unit): Interval | undefined {
  const word = text.trim();
  if (word === UNKNOWN) return undefined;
  if (word === INFINITE) return { lo: Infinity, hi: Infinity, certain: true };
  const quantity = parseQuantity(text);
  const refuse = (found: string, expected: string) =>
    new TextError({ code: 'not-a-fact', start: 0, end: text.length, found: `\`${text}\`${found}`, expected });
  if (!same(quantity.unit.dimension, unit.dimension))
    throw refuse(
      `, a quantity of ${describeDimension(quantity.unit.dimension)}`,
      `a quantity of ${describeDimension(unit.dimension)}, \`infinite\` or \`unknown\``,
    );
  if (quantity.drift || quantity.driftAbsolute || quantity.ageing)
    throw refuse(', which drifts or ages', 'the range that it comes to, such as `9 A to 11 A`');
  if (quantity.min < 0) throw refuse(', which reaches below zero', 'the size of the quantity');
  return { lo: quantity.min, hi: quantity.max, certain: true };
}
