import { limitsOf } from './apply-terms.ts';
import { toNumber } from './decimal.ts';
import { isPure, multiplied, same } from './dimension.ts';
import { digitsText, exactIn } from './figure.ts';
import { kinds } from './kinds.ts';
import type { Place } from './place.ts';
import type { Distribution } from './quantity.ts';
import { type Change, isShare, readAgeing, readChange } from './read-change.ts';
import type { Source } from './read-unit.ts';
import { spreadProblems } from './spread-problems.ts';
import type { Unit } from './unit.ts';

/** The value that terms are said of. */
export interface Base {
  readonly unit: Unit;
  readonly typ: number;
}

/** A change that is known to be a share of the value, or a step in the value's dimension. */
export interface SortedChange extends Change {
  readonly of: 'share' | 'step';
}

/** What stands behind a value, sorted by what it says. A drift is per kelvin. */
export interface Terms {
  readonly tolerance?: SortedChange;
  readonly drift?: SortedChange;
  readonly ageing?: SortedChange;
  readonly distribution?: { readonly word: Distribution; readonly place: Place };
}

const distributions: readonly Distribution[] = ['normal', 'uniform', 'triangular'];
const perKelvin = kinds['temperature coefficient'].of;

/** Reads everything from `start` to the end of the text as terms. */
export function readTerms(source: Source, start: number, base: Base): Terms {
  const { text, tokens } = source;
  const terms: { -readonly [K in keyof Terms]: Terms[K] } = {};
  let at = start;
  while (at < tokens.length) {
    const token = tokens[at]!;
    const word = distributions.find((distribution) => distribution === token.text);
    if (word) {
      if (terms.distribution) throw spreadProblems.twice(text, token, 'distribution');
      terms.distribution = { word, place: token };
      at += 1;
      continue;
    }
    const ageing = token.text === 'age';
    const { change, next } = ageing ? readAgeing(source, at) : readChange(source, at);
    const kind = ageing ? 'ageing' : kindOf(source, change, base.unit);
    if (terms[kind]) throw spreadProblems.twice(text, change.place, kind);
    terms[kind] = sorted(source, kind, change, base);
    at = next;
  }
  return terms;
}

/** Whether a change is a tolerance or a drift, by its dimension. */
function kindOf({ text }: Source, { unit, place }: Change, base: Unit): 'tolerance' | 'drift' {
  if (!unit) {
    if (base.text === '') return 'tolerance';
    throw spreadProblems.toleranceUnit(text, place, base);
  }
  if (isShare(unit) || same(unit.dimension, base.dimension)) return 'tolerance';
  if (same(unit.dimension, perKelvin)) return 'drift';
  const own = multiplied(base.dimension, perKelvin);
  if (same(unit.dimension, own) && !isPure(own)) return 'drift';
  throw spreadProblems.toleranceKind(text, place, unit.dimension, base);
}

/** A share of 0 says nothing, so of a pure number that is 0 (a gain error) `±1 %` and `±10 ppm/K` are steps. */
function sorted(source: Source, kind: 'tolerance' | 'drift' | 'ageing', change: Change, base: Base): SortedChange {
  const { unit } = change;
  const share = kind === 'drift' ? unit !== undefined && same(unit.dimension, perKelvin) : isShare(unit);
  const zeroNumber = base.typ === 0 && isPure(base.unit.dimension) && kind !== 'ageing';
  if (!share || zeroNumber) return { ...change, of: 'step' };
  refuseShare(source, kind, change, base);
  if (kind === 'tolerance') refuseShareOfShare(source, change, base);
  return { ...change, of: 'share' };
}

/** Refuses a share that means nothing or can be read two ways. */
export function refuseShare(
  { text }: Source,
  kind: 'tolerance' | 'drift' | 'ageing',
  { down, place }: Pick<Change, 'down' | 'place'>,
  { unit, typ }: Base,
): void {
  if (unit.offset !== 0) throw spreadProblems.shareOfTemperature(text, place);
  if (typ === 0 && kind === 'drift') throw spreadProblems.driftOfZero(text, place, unit);
  if (typ === 0) throw spreadProblems.shareOfZero(text, place, unit);
  if (kind !== 'drift' && toNumber(down) > 1) throw spreadProblems.overWhole(text, place);
}

/** Refuses `90 % ±2 %`: 2 % of the value, 88.2 % to 91.8 %, or two points, 88 % to 92 %? */
function refuseShareOfShare({ text }: Source, change: Change, { unit, typ }: Base): void {
  if (change.unit?.text !== unit.text) return;
  const share = `${typ} ${text.slice(change.place.start, change.place.end)}`;
  const { min, max } = limitsOf(typ, { ...change, of: 'step' });
  const steps = [min, typ, max].map((limit) => digitsText(exactIn(limit, unit))).join(' / ');
  throw spreadProblems.shareOfShare(text, change.place, unit, share, `${steps} ${unit.text}`);
}
