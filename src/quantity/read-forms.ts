import { changesOf, type Limits, limitsOf } from './apply-terms.ts';
import { pureUnit } from './compose-unit.ts';
import { decimalOf, plus, times, toNumber } from './decimal.ts';
import { same } from './dimension.ts';
import { digitsText, inSi } from './figure.ts';
import { numberProblems } from './number-problems.ts';
import type { Quantity } from './quantity.ts';
import { quantityProblems } from './quantity-problems.ts';
import { isShare } from './read-change.ts';
import { largest, type Measure, readMeasure, shareUnits, smallest } from './read-measure.ts';
import { readTerms, refuseShare } from './read-terms.ts';
import type { Source } from './read-unit.ts';
import { spreadProblems } from './spread-problems.ts';
import type { Unit } from './unit.ts';

/** A quantity that does not know its text yet. */
export type Body = Omit<Quantity, 'text'>;

/** `10`, `3.3 V`, `10 kohm ±1 % ±100 ppm/K age ±0.5 % uniform` */
export function readPart(source: Source, first: Measure): Body {
  const unit = first.unit ?? pureUnit;
  const typ = siValue(source, first, unit);
  const terms = readTerms(source, first.next, { unit, typ });
  const { tolerance, drift, ageing, distribution } = terms;
  if (distribution && !tolerance) throw spreadProblems.nothingSpread(source.text, distribution.place);
  const limits = tolerance ? limitsOf(typ, tolerance) : { min: typ, max: typ };
  if (!tolerance && !drift && !ageing) return { form: 'number', unit, typ, ...limits };
  return { form: 'tolerance', unit, typ, ...limits, distribution: distribution?.word ?? 'normal', ...changesOf(terms) };
}

/** `4 / 5 / 6 uA`, after the first number. */
export function readTriple(source: Source, first: Measure): Body {
  const { text, tokens } = source;
  const second = readMeasure(source, first.next + 1, 'after /, such as 4 / 5 / 6 uA');
  if (tokens[second.next]?.text !== '/')
    throw quantityProblems.twoNumbers(text, { start: first.place.start, end: second.place.end });
  const third = readMeasure(source, second.next + 1, 'after /, such as 4 / 5 / 6 uA');
  const three = together(source, [first, second, third]);
  inOrder(source, three, 'minimum / typical / maximum in rising order', ' / ');
  const [min, typ, max] = three.map(({ value }) => value) as [number, number, number];
  const { unit } = three[1]!;
  const terms = readTerms(source, third.next, { unit, typ });
  if (terms.tolerance) throw quantityProblems.tripleTolerance(text, terms.tolerance.place);
  const distribution = terms.distribution?.word ?? 'triangular';
  return { form: 'triple', unit, min, typ, max, distribution, ...changesOf(terms) };
}

/** `2.1 mohm sd 0.05 mohm`, after the mean. */
export function readMeasured(source: Source, mean: Measure): Body {
  const { text } = source;
  const sd = readMeasure(source, mean.next + 1, 'after sd, such as sd 5 mV');
  const ofMean = isShare(sd.unit) && !isShare(mean.unit);
  const unit = mean.unit ?? (ofMean ? undefined : sd.unit) ?? pureUnit;
  const sdUnit = sd.unit ?? unit;
  if (!ofMean && !same(sdUnit.dimension, unit.dimension))
    throw quantityProblems.wrongKind(text, sd.place, sdUnit, unit);
  const typ = siValue(source, mean, unit);
  const step = times(sd.number, decimalOf(sdUnit.scale));
  if (ofMean) refuseShare(source, 'tolerance', { down: step, place: sd.place }, { unit, typ });
  const deviation = toNumber(ofMean ? times(decimalOf(Math.abs(typ)), step) : step);
  if (!(deviation >= smallest && deviation <= largest)) throw quantityProblems.deviation(text, sd.place);
  const terms = readTerms(source, sd.next, { unit, typ });
  const refused = terms.tolerance ?? terms.distribution;
  if (refused) throw quantityProblems.measuredWord(text, refused.place);
  return { form: 'measured', unit, typ, ...measuredLimits(typ, deviation), sd: deviation, ...changesOf(terms) };
}

/** Where the worst case of a measured spread is taken: four standard deviations either side of its mean. */
export function measuredLimits(mean: number, sd: number): Limits {
  const reach = times(decimalOf(sd), decimalOf(4));
  return limitsOf(mean, { up: reach, down: reach, of: 'step' });
}

/** `3.0 V to 4.2 V typ 3.6 V`, after the lower end. */
export function readRange(source: Source, low: Measure): Body {
  const { text, tokens } = source;
  const high = readMeasure(source, low.next + 1, 'after to, such as 3.0 to 4.2 V');
  const said = tokens[high.next]?.text === 'typ';
  const usual = said ? readMeasure(source, high.next + 1, 'after typ, such as 3.0 to 4.2 V typ 3.6 V') : undefined;
  const ends = together(source, usual ? [low, high, usual] : [low, high]);
  inOrder(source, ends.slice(0, 2), 'the lower end first', ' to ');
  const [min, max] = ends.map(({ value }) => value) as [number, number];
  const typ = ends[2]?.value ?? toNumber(times(plus(decimalOf(min), decimalOf(max)), decimalOf(0.5)));
  if (usual && (typ < min || typ > max)) throw quantityProblems.outside(text, usual.place);
  const after = tokens[(usual ?? high).next];
  if (after) throw quantityProblems.rangeTerm(text, { start: after.start, end: text.trimEnd().length });
  return { form: 'range', unit: ends.at(-1)!.unit, min, typ, max };
}

interface Valued {
  readonly measure: Measure;
  readonly unit: Unit;
  /** In SI base units. */
  readonly value: number;
}

/** Several numbers of one kind. */
function together(source: Source, measures: readonly Measure[]): Valued[] {
  const units = shareUnits(measures).map((unit) => unit ?? pureUnit);
  return measures.map((measure, i) => {
    const unit = units[i]!;
    if (!same(unit.dimension, units[0]!.dimension))
      throw quantityProblems.wrongKind(source.text, measure.place, unit, units[0]!);
    return { measure, unit, value: siValue(source, measure, unit) };
  });
}

/** The value in SI base units, if it has a size that a circuit can have. */
function siValue({ text }: Source, { number, place }: Measure, unit: Unit): number {
  const si = inSi(number, unit);
  const tooSmall = Math.abs(si) < smallest && number.digits !== 0n && unit.offset === 0;
  if (tooSmall || Math.abs(si) > largest) throw numberProblems.size(text, place);
  if (unit.offset !== 0 && si < 0) throw numberProblems.belowZeroKelvin(text, place);
  return si;
}

function inOrder({ text }: Source, values: readonly Valued[], order: string, by: string): void {
  const wrong = values.findIndex(({ value }, i) => i > 0 && value < values[i - 1]!.value);
  if (wrong < 0) return;
  const place = { start: values[wrong - 1]!.measure.place.start, end: values[wrong]!.measure.place.end };
  const rising = [...values].sort((a, b) => a.value - b.value);
  const written = rising.map(({ measure, unit }) => `${digitsText(measure.number)} ${unit.text}`.trim()).join(by);
  throw quantityProblems.reversed(text, place, order, written);
}
