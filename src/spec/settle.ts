import { dimensionOf } from '../expression/readings/dimension.ts';
import type { Tree } from '../expression/tree.ts';
import { kindOf } from '../quantity/coherent-unit.ts';
import { type Dimension, pureNumber, same } from '../quantity/dimension.ts';
import { TextError } from '../quantity/text-problem.ts';
import type { Unit } from '../quantity/unit.ts';
import { coherentUnit } from '../quantity/units.ts';
import type { Check, Circuit, Input, Result } from './board.ts';
import { reportLoops } from './loops.ts';
import { mentioned, resolved, type Scope, scopeOf, scopeWithin } from './names.ts';
import { ordered } from './order.ts';
import type { DraftCheck, DraftCircuit } from './read-circuit.ts';
import { hasKey, type Report } from './report.ts';
import { totalsOf } from './totals.ts';
import type { Path } from './yaml-file.ts';

/**
 * Gives every name its meaning and every equation its dimension, before anything is calculated: unknown names, loops
 * and units that disagree are reported here, each at its place. What could not be read before is taken as it was meant, so
 * that nothing is said about its consequences.
 * @param unread  circuits and conditions that could not be read
 */
export function settle(
  report: Report,
  drafts: readonly DraftCircuit[],
  conditions: readonly Input[],
  derating: readonly Input[],
  unread: ReadonlySet<string>,
): { circuits: Circuit[]; totals: Result[] } {
  const totals = totalsOf(drafts);
  const declared = drafts.flatMap((draft) => [...draft.declared].map((symbol) => `${draft.id}.${symbol}`));
  const everywhere = new Set([...[...conditions, ...derating, ...totals].map(({ id }) => id), ...declared]);
  // Factors and sums may be missing because of what was reported already.
  const sound = report.problems.length === 0;
  const excused = (name: string) => {
    const owner = name.split('.', 1)[0]!;
    return unread.has(owner) || (!sound && (owner === 'board' || owner === 'derating'));
  };
  const conditionIds = new Set(conditions.map(({ id }) => id));
  const scopes = new Map(drafts.map((draft) => [draft.id, scopeOf(draft.id, draft.declared, everywhere, excused)]));
  const named = drafts.map((draft) => withNames(report, draft, scopes.get(draft.id)!, conditionIds));
  const trees = new Map<string, Tree>(totals.map((total) => [total.id, total.tree]));
  for (const { inputs, results } of named) {
    for (const { id, value } of inputs) if (value.kind === 'expression') trees.set(id, value.tree);
    for (const { id, tree } of results) trees.set(id, tree);
  }
  const { order, loops } = ordered(everywhere, needsIn(named, trees));
  reportLoops(report, loops, named, conditionIds);
  const dimensions = new Map<string, Dimension>();
  for (const input of [...conditions, ...derating, ...named.flatMap((d) => d.inputs)]) {
    if (input.value.kind !== 'expression') dimensions.set(input.id, input.unit.dimension);
  }
  const units = settleDimensions(report, named, totals, order, trees, dimensions);
  const circuits = named.map((draft) => finished(report, draft, dimensions, units));
  return { circuits: report.problems.length ? [] : circuits, totals };
}

function withNames(report: Report, draft: DraftCircuit, scope: Scope, conditions: ReadonlySet<string>): DraftCircuit {
  const renameIn = (tree: Tree, path: Path, within: Scope): Tree =>
    resolved(tree, within, (problem) => report.problems.push(report.yaml.within(path, problem)));
  const rename = (tree: Tree, path: Path): Tree => renameIn(tree, path, scope);
  const at = (id: string, key?: string): Path => {
    const path = draft.places.get(id) ?? ['circuits', draft.id];
    return key && path.at(-1) !== 'method' && hasKey(report, path, key) ? [...path, key] : path;
  };
  return {
    ...draft,
    inputs: draft.inputs.map((input) =>
      named(
        input,
        (tree) => renameIn(tree, at(input.id, 'is'), scopeWithin(input.symbol, scope, conditions)),
        (of) => tracked(report, input, of, draft, at(input.id, 'tracks')),
      ),
    ),
    results: draft.results.map((result) => ({ ...result, tree: rename(result.tree, at(result.id, 'is')) })),
    checks: draft.checks.map((check) => nameCheck(check, draft, rename, at)),
    validity: draft.validity.map((check) => nameCheck(check, draft, rename, at)),
    firmware: draft.firmware.map((constant) => ({ ...constant, tree: rename(constant.tree, at(constant.id, 'is')) })),
    testPoints: draft.testPoints,
    ...(draft.temperature ? { temperature: rename(draft.temperature, at(`${draft.id}@temperature`)) } : {}),
  };
}

const nameCheck = (
  check: DraftCheck,
  draft: DraftCircuit,
  rename: (tree: Tree, path: Path) => Tree,
  at: (id: string, key?: string) => Path,
): DraftCheck => {
  const path = at(`${draft.id}:${check.name}`, 'holds');
  return { ...check, left: rename(check.left, path), right: rename(check.right, path) };
};

function named(input: Input, rename: (tree: Tree) => Tree, track: (of: string) => string): Input {
  const { value } = input;
  if (value.kind === 'expression') return { ...input, value: { ...value, tree: rename(value.tree) } };
  if (value.kind === 'part' && value.tracks)
    return { ...input, value: { ...value, tracks: { ...value.tracks, of: track(value.tracks.of) } } };
  return input;
}

/** A tracked part must be a part of the same circuit that tracks nothing itself: one reel, one network. */
function tracked(report: Report, input: Input, of: string, draft: DraftCircuit, path: Path): string {
  const other = draft.inputs.find(({ symbol }) => symbol === of);
  if (other?.value.kind === 'part' && !other.value.tracks && other.id !== input.id && other.value.quantity.typ !== 0)
    return other.id;
  report.add(path, {
    code: 'cannot-track',
    found: `\`${of}\``,
    expected: 'a part of the same circuit that has a tolerance and tracks no other',
  });
  return of;
}

/** What an id cannot be worked out without. */
function needsIn(drafts: readonly DraftCircuit[], trees: ReadonlyMap<string, Tree>): (id: string) => Iterable<string> {
  // A part that drifts needs the temperature of its circuit, and so must not feed into it.
  const follows = new Map<string, Tree>();
  for (const { temperature, inputs } of drafts) {
    if (!temperature) continue;
    for (const { id, value } of inputs)
      if (value.kind === 'part' && (value.quantity.drift ?? value.quantity.driftAbsolute)) follows.set(id, temperature);
  }
  return (id) => {
    const needed = new Set<string>();
    for (const tree of [trees.get(id), follows.get(id)]) if (tree) mentioned(tree, needed);
    return needed;
  };
}

function settleDimensions(
  report: Report,
  drafts: readonly DraftCircuit[],
  totals: readonly Result[],
  order: readonly string[],
  trees: ReadonlyMap<string, Tree>,
  dimensions: Map<string, Dimension>,
): Map<string, Unit> {
  const declared = new Map<string, Unit>(totals.map(({ id, unit }) => [id, unit]));
  const places = new Map(drafts.flatMap((draft) => [...draft.places]));
  const units = new Map<string, Unit>();
  for (const draft of drafts) {
    for (const { id, unit } of [...draft.inputs, ...draft.results]) if (!draft.unitless.has(id)) declared.set(id, unit);
  }
  for (const id of order) {
    const unit = declared.get(id);
    const tree = trees.get(id);
    if (tree && settled(tree, dimensions)) {
      const base = places.get(id) ?? [];
      const path = hasKey(report, base, 'is') ? [...base, 'is'] : base;
      const found = report.attempt(path, () => valueDimension(tree, dimensions, unit, ownerOf(id)));
      if (found) dimensions.set(id, found);
      if (!unit && found) units.set(id, coherentUnit(found));
    }
    // What is said of an equation that is wrong should not be said again of all that follow from it.
    if (unit && !dimensions.has(id)) dimensions.set(id, unit.dimension);
  }
  return units;
}

const ownerOf = (id: string): string => id.split('.', 1)[0]!;

/** Whether the dimension of every name in a tree is known; where one is not, its own problem has been reported. */
const settled = (tree: Tree, dimensions: ReadonlyMap<string, Dimension>): boolean =>
  [...mentioned(tree)].every((id) => dimensions.has(id));

/** Dimension of a tree whose names are ids; problems name the symbols of the circuit `own` as they are typed there. */
function dimensionIn(own: string, tree: Tree, dimensions: ReadonlyMap<string, Dimension>): Dimension | 'truth' {
  const typed = asTyped(tree, `${own}.`);
  return dimensionOf(typed, (name) => dimensions.get(`${own}.${name}`) ?? dimensions.get(name)!);
}

function asTyped(tree: Tree, own: string): Tree {
  if (tree.kind === 'symbol' && tree.name.startsWith(own)) return { ...tree, name: tree.name.slice(own.length) };
  return tree.kind === 'call' ? { ...tree, args: tree.args.map((arg) => asTyped(arg, own)) } : tree;
}

function valueDimension(
  tree: Tree,
  dimensions: ReadonlyMap<string, Dimension>,
  unit: Unit | undefined,
  own: string,
): Dimension {
  const found = dimensionIn(own, tree, dimensions);
  if (found === 'truth')
    throw new TextError({
      code: 'truth-as-value',
      ...tree.at,
      found: 'a comparison',
      expected: 'a number; use `if(condition, a, b)` to choose between two',
    });
  if (unit && !same(found, unit.dimension)) {
    const pure = same(unit.dimension, pureNumber);
    throw new TextError({
      code: 'units-disagree',
      ...tree.at,
      found: `an expression that comes to ${kindOf(found)}`,
      expected: pure
        ? 'a pure number, since its unit is 1'
        : `${kindOf(unit.dimension)}, since its unit is ${unit.text}`,
    });
  }
  return found;
}

function finished(
  report: Report,
  draft: DraftCircuit,
  dimensions: ReadonlyMap<string, Dimension>,
  units: ReadonlyMap<string, Unit>,
): Circuit {
  const { places, unitless, declared, checkNames, checks, validity, ...rest } = draft;
  const none = coherentUnit(pureNumber);
  const check = (one: DraftCheck): Check => {
    if (!settled(one.left, dimensions) || !settled(one.right, dimensions)) return { ...one, unit: none };
    const path = places.get(`${draft.id}:${one.name}`) ?? [];
    const at = path.at(-1) === 'method' ? path : [...path, 'holds'];
    return { ...one, unit: report.attempt(at, () => limitUnit(one, draft, dimensions)) ?? none };
  };
  const constant = (one: Result): Result => {
    if (!settled(one.tree, dimensions)) return one;
    const free = unitless.has(one.id);
    const path = places.get(one.id) ?? [];
    const at = hasKey(report, path, 'is') ? [...path, 'is'] : path;
    const found = report.attempt(at, () => valueDimension(one.tree, dimensions, free ? undefined : one.unit, draft.id));
    return free && found ? { ...one, unit: coherentUnit(found) } : one;
  };
  return {
    ...rest,
    inputs: draft.inputs.map((input) => ({ ...input, unit: units.get(input.id) ?? input.unit })),
    firmware: draft.firmware.map(constant),
    checks: checks.map(check),
    validity: validity.map(check),
  };
}

/** Both sides must be of one dimension; the slack is printed in the unit of the limit, or of what is limited. */
function limitUnit(check: DraftCheck, draft: DraftCircuit, dimensions: ReadonlyMap<string, Dimension>): Unit {
  const left = dimensionIn(draft.id, check.left, dimensions);
  const right = dimensionIn(draft.id, check.right, dimensions);
  if (left === 'truth' || right === 'truth')
    throw new TextError({
      code: 'truth-as-value',
      ...check.left.at,
      found: 'a comparison inside a comparison',
      expected: 'two numbers to compare',
    });
  if (!same(left, right)) {
    throw new TextError({
      code: 'units-disagree',
      start: check.left.at.start,
      end: check.right.at.end,
      found: `${kindOf(left)} on the left and ${kindOf(right)} on the right`,
      expected: 'the same kind of quantity on both sides',
    });
  }
  return typedUnit(check.right, draft) ?? typedUnit(check.left, draft) ?? coherentUnit(left);
}

function typedUnit(tree: Tree, draft: DraftCircuit): Unit | undefined {
  if (tree.kind === 'number') return tree.unit;
  if (tree.kind === 'symbol') return [...draft.inputs, ...draft.results].find(({ id }) => id === tree.name)?.unit;
  return undefined;
}
