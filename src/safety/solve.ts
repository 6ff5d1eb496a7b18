import type { Interval } from '../expression/interval.ts';
import { point } from '../expression/ranges.ts';
import type { Tree } from '../expression/tree.ts';
import type { Fed, Feeding } from './fed.ts';
import type { KnownFlag } from './flags-of.ts';
import { dangerous, joined, standIn, withEquation, withoutEnd } from './join.ts';
import { namesIn } from './names-in.ts';
import type { HazardQuantity, SafetyData } from './safety-data.ts';
import { isPoint, type Knowledge, rangeOf, type Truth, truthOf } from './truths.ts';

/** What is known of one hazard quantity on one board. */
export interface HazardValue {
  readonly quantity: HazardQuantity;
  readonly state: 'known' | 'unknown' | 'infinite';
  /** The one number at the dangerous end where it is known; else where it may lie. SI base units. */
  readonly range: Interval;
  /** Ids of results, inputs and facts that it comes from, directly or by its equation. */
  readonly from: readonly string[];
  readonly circuits: readonly string[];
  /** Names that would have to be given for it to be known. */
  readonly missing: readonly string[];
  /** Names that stand in for what nobody gave, and why. */
  readonly assumed: ReadonlyMap<string, string>;
}

/** Every hazard quantity of a board at its dangerous end, and the facts beside them. */
export interface Solved {
  readonly values: ReadonlyMap<string, HazardValue>;
  readonly flags: ReadonlyMap<string, KnownFlag>;
  readonly known: Knowledge;
}

/**
 * Works out every hazard quantity, in the order of the tables. Numbers that circuits and the spec give are joined by the
 * quantity's rule; whatever its equation makes certain then counts where it is more dangerous. Pure.
 */
export function solve(data: SafetyData, feeding: Feeding, flags: ReadonlyMap<string, KnownFlag>): Solved {
  const values = new Map<string, HazardValue>();
  const known: Knowledge = (name) => values.get(name)?.range ?? flagRange(flags.get(name)!.truth);
  for (const quantity of data.quantities.values())
    values.set(quantity.symbol, solveOne(quantity, feeding, known, values));
  return { values, flags, known };
}

const flagRange = (truth: Truth): Interval =>
  truth === 'unknown' ? { lo: 0, hi: 1, certain: false } : point(truth === 'yes' ? 1 : 0);

function solveOne(
  quantity: HazardQuantity,
  sources: Feeding,
  known: Knowledge,
  values: ReadonlyMap<string, HazardValue>,
): HazardValue {
  const fed = sources.get(quantity.tag) ?? [];
  const given = fed.length ? joined(fed, quantity) : undefined;
  const isZero = !given && quantity.zeroWhen && truthOf(quantity.zeroWhen, known) === 'yes';
  const endless = quantity.infiniteWhen ? truthOf(quantity.infiniteWhen, known) : 'no';
  // An equation that only stands in is not heard where somebody gave the number.
  const equation = quantity.equals && !(given && quantity.assumed) ? rangeOf(quantity.equals, known) : undefined;
  const before: Interval = isZero
    ? point(0)
    : given
      ? withEquation(given, equation, quantity)
      : (equation ?? standIn(quantity));
  const range = dangerous(withoutEnd(before, endless), quantity);
  const used =
    isZero || (given && isPoint(given) && range.lo === given.lo)
      ? new Set<string>()
      : namesUsed(quantity, equation, endless);
  const parts = [...used].flatMap((name) => values.get(name) ?? []);
  const state = !isPoint(range) ? 'unknown' : range.lo === Infinity ? 'infinite' : 'known';
  return {
    quantity,
    state,
    range,
    from: unique([...fed.map(({ id }) => id), ...parts.flatMap(({ from }) => from)]),
    circuits: unique([...fed.flatMap(({ circuit }) => circuit ?? []), ...parts.flatMap(({ circuits }) => circuits)]),
    missing: state === 'unknown' ? missingOf(quantity, fed, used, values, known) : [],
    assumed: assumedOf(quantity, given !== undefined, state, parts),
  };
}

function namesUsed(
  { equals, infiniteWhen }: HazardQuantity,
  equation: Interval | undefined,
  endless: Truth,
): Set<string> {
  const trees: Tree[] = [];
  if (equals && equation) trees.push(equals);
  if (infiniteWhen && endless === 'unknown') trees.push(infiniteWhen);
  return namesIn(...trees);
}

/** The names at the root of it: sources without a number, else those that nothing gives and no equation leads down from. */
function missingOf(
  quantity: HazardQuantity,
  fed: readonly Fed[],
  used: ReadonlySet<string>,
  values: ReadonlyMap<string, HazardValue>,
  known: Knowledge,
): string[] {
  const open = [...used].flatMap((name) => values.get(name)?.missing ?? (isPoint(known(name)) ? [] : [name]));
  const silent = fed
    .filter(({ bounds }) => !Number.isFinite(quantity.danger === 'up' ? bounds.hi : bounds.lo))
    .map(({ id }) => id);
  const all = unique([...silent, ...open]);
  return all.length ? all : [quantity.tag];
}

function assumedOf(
  quantity: HazardQuantity,
  given: boolean,
  state: HazardValue['state'],
  parts: readonly HazardValue[],
): Map<string, string> {
  const assumed = new Map(parts.flatMap((part) => [...part.assumed]));
  if (given || state !== 'known') return assumed;
  const why = quantity.equals ? quantity.assumed : quantity.default?.why;
  return why ? assumed.set(quantity.symbol, why) : assumed;
}

const unique = <T>(all: readonly T[]): T[] => [...new Set(all)];
