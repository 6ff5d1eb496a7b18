import { pureUnit } from './compose-unit.ts';
import { type Decimal, decimalOf, plus, times, toNumber } from './decimal.ts';
import { same } from './dimension.ts';
import { inSi } from './figure.ts';
import { kinds } from './kinds.ts';
import { type Limits, limitsOfShare, limitsOfStep } from './limits.ts';
import type { Place } from './place.ts';
import type { Band, Quantity } from './quantity.ts';
import { quantityProblems } from './quantity-problems.ts';
import { type Measure, readMeasure, shareUnits } from './read-measure.ts';
import { type Change, isShare, readTerms, type Terms } from './read-terms.ts';
import type { Source } from './read-unit.ts';
import type { Unit } from './unit.ts';

/** A quantity that does not know its text yet. */
export type Body = Omit<Quantity, 'text'>;

const perKelvin = kinds['temperature coefficient'].of;

/** Deviations either side of the mean that a measured spread's worst case is taken at. */
const measuredLimit = decimalOf(4);

/** `10`, `3.3 V`, `10 kohm ±1 % ±100 ppm/K age ±0.5 % uniform` */
export function readPart(source: Source, first: Measure): Body {
  const unit = first.unit ?? pureUnit;
  const typ = value(source, first, unit);
  const terms = readTerms(source, first.next, unit);
  const { tolerance, distribution } = terms;
  if (distribution && !tolerance) throw quantityProblems.nothingSpread(source.text, distribution.place);
  const limits = tolerance ? toleranceLimits(source, tolerance, typ, unit) : { min: typ, max: typ };
  const changes = changesOf(source, terms, unit, limits);
  if (!tolerance && !changes.drift && !changes.driftAbsolute && !changes.ageing)
    return { form: 'number', unit, typ, ...limits };
  return { form: 'tolerance', unit, typ, ...limits, distribution: distribution?.word ?? 'normal', ...changes };
}

/** `4 / 5 / 6 uA`: after the first number. */
export function readTriple(source: Source, first: Measure): Body {
  const { text, tokens } = source;
  const second = readMeasure(source, first.next + 1, 'after /, such as 4 / 5 / 6 uA');
  if (tokens[second.next]?.text !== '/')
    throw quantityProblems.twoNumbers(text, { start: first.place.start, end: second.place.end });
  const third = readMeasure(source, second.next + 1, 'after /, such as 4 / 5 / 6 uA');
  const three = together(source, [first, second, third]);
  inOrder(source, [first, second, third], three, 'minimum / typical / maximum in rising order', ' / ');
  const [min, typ, max] = three.values as [number, number, number];
  const unit = three.units[1]!;
  const terms = readTerms(source, third.next, unit);
  if (terms.tolerance) throw quantityProblems.tripleTolerance(text, terms.tolerance.place);
  const distribution = terms.distribution?.word ?? 'triangular';
  return { form: 'triple', unit, min, typ, max, distribution, ...changesOf(source, terms, unit, { min, max }) };
}

/** `2.1 mohm sd 0.05 mohm`: after the mean. */
export function readMeasured(source: Source, mean: Measure): Body {
  const { text } = source;
  const sd = readMeasure(source, mean.next + 1, 'after sd, such as sd 5 mV');
  const ofMean = isShare(sd.unit) && !isShare(mean.unit);
  const unit = mean.unit ?? (ofMean ? pureUnit : (sd.unit ?? pureUnit));
  const sdUnit = sd.unit ?? unit;
  if (!ofMean && !same(sdUnit.dimension, unit.dimension))
    throw quantityProblems.wrongKind(text, sd.place, sdUnit.dimension, unit.dimension, unit);
  const typ = value(source, mean, unit);
  if (ofMean) refuseShare(source, sd.place, typ, unit);
  const step = times(sd.number, decimalOf(sdUnit.scale));
  const deviation = ofMean ? toNumber(times(decimalOf(Math.abs(typ)), step)) : toNumber(step);
  if (!(deviation > 0)) throw quantityProblems.deviation(text, sd.place);
  const reach = times(decimalOf(deviation), measuredLimit);
  const limits = limitsOfStep(typ, reach, reach);
  const terms = readTerms(source, sd.next, unit);
  const refused = terms.tolerance ?? terms.distribution;
  if (refused) throw quantityProblems.measuredWord(text, refused.place);
  return { form: 'measured', unit, typ, ...limits, sd: deviation, ...changesOf(source, terms, unit, limits) };
}

/** `3.0 V to 4.2 V typ 3.6 V`: after the lower end. */
export function readRange(source: Source, low: Measure): Body {
  const { text, tokens } = source;
  const high = readMeasure(source, low.next + 1, 'after to, such as 3.0 to 4.2 V');
  const middle = tokens[high.next]?.text === 'typ';
  const usual = middle ? readMeasure(source, high.next + 1, 'after typ, such as 3.0 to 4.2 V typ 3.6 V') : undefined;
  const ends = together(source, usual ? [low, high, usual] : [low, high]);
  inOrder(source, [low, high], ends, 'the lower end first', ' to ');
  const [min, max] = ends.values as [number, number];
  const typ = ends.values[2] ?? toNumber(times(plus(decimalOf(min), decimalOf(max)), decimalOf(0.5)));
  if (typ < min || typ > max) throw quantityProblems.outside(text, usual!.place);
  const after = tokens[(usual ?? high).next];
  if (after) throw quantityProblems.rangeTerm(text, { start: after.start, end: text.trimEnd().length });
  return { form: 'range', unit: ends.units[usual ? 2 : 1]!, min, typ, max };
}

interface Together {
  readonly units: readonly Unit[];
  readonly values: readonly number[];
}

/** Several numbers of one kind, each in SI base units. */
function together(source: Source, measures: readonly Measure[]): Together {
  const units = shareUnits(measures).map((unit) => unit ?? pureUnit);
  for (const [i, unit] of units.entries()) {
    if (!same(unit.dimension, units[0]!.dimension))
      throw quantityProblems.wrongKind(source.text, measures[i]!.place, unit.dimension, units[0]!.dimension, units[0]!);
  }
  return { units, values: measures.map((measure, i) => value(source, measure, units[i]!)) };
}

/** A double of the size a circuit can have. */
function value({ text }: Source, { number, place }: Measure, unit: Unit): number {
  const si = inSi(number, unit);
  const sound = number.digits === 0n || (Math.abs(si) >= 1e-300 && Math.abs(si) <= 1e300) || unit.offset !== 0;
  if (!sound) throw quantityProblems.size(text, place);
  return si;
}

function inOrder(source: Source, measures: readonly Measure[], { units, values }: Together, order: string, by: string) {
  const wrong = values.findIndex((one, i) => i > 0 && i < measures.length && one < values[i - 1]!);
  if (wrong < 0) return;
  const place = { start: measures[wrong - 1]!.place.start, end: measures[wrong]!.place.end };
  const sorted = measures
    .map(({ number }, i) => ({
      typed: `${Number(`${number.digits}e${number.exponent}`)} ${units[i]!.text}`.trim(),
      value: values[i]!,
    }))
    .sort((a, b) => a.value - b.value);
  throw quantityProblems.reversed(source.text, place, order, sorted.map(({ typed }) => typed).join(by));
}

function toleranceLimits(source: Source, { up, down, unit, place }: Change, typ: number, base: Unit): Limits {
  if (!isShare(unit)) return limitsOfStep(typ, up, down);
  refuseShare(source, place, typ, base);
  if (toNumber(down) > 1) throw quantityProblems.overWhole(source.text, place);
  return limitsOfShare(typ, up, down);
}

function refuseShare({ text }: Source, place: Place, typ: number, base: Unit): void {
  if (base.offset !== 0) throw quantityProblems.shareOfTemperature(text, place);
  if (typ === 0) throw quantityProblems.shareOfZero(text, place, base);
}

type Changes = Pick<Body, 'drift' | 'driftAbsolute' | 'ageing' | 'typedIn'>;

/** Drift and ageing as bands, with the units all changes were typed in. */
function changesOf(source: Source, { tolerance, drift, ageing }: Terms, base: Unit, { min, max }: Limits): Changes {
  const { text } = source;
  const ownUnit = drift?.unit && !same(drift.unit.dimension, perKelvin);
  const zero = min === 0 && max === 0;
  for (const share of [ownUnit ? undefined : drift, ageing])
    if (share && base.offset !== 0) throw quantityProblems.shareOfTemperature(text, share.place);
  if (drift && !ownUnit && zero) throw quantityProblems.driftOfZero(text, drift.place, base);
  if (ageing && zero) throw quantityProblems.shareOfZero(text, ageing.place, base);
  if (ageing && toNumber(ageing.down) > 1) throw quantityProblems.overWhole(text, ageing.place);
  const typedIn = {
    ...(tolerance?.unit && { tolerance: tolerance.unit }),
    ...(drift?.unit && { drift: drift.unit }),
    ...(ageing?.unit && { ageing: ageing.unit }),
  };
  return {
    ...(drift && (ownUnit ? { driftAbsolute: band(drift) } : { drift: band(drift) })),
    ...(ageing && { ageing: band(ageing) }),
    ...(Object.keys(typedIn).length > 0 && { typedIn }),
  };
}

// 0 − x, not −x: a side of 0 shall be 0, not −0.
const band = ({ up, down }: { up: Decimal; down: Decimal }): Band => ({ min: 0 - toNumber(down), max: toNumber(up) });
