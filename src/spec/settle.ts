import { dimensionOf } from '../expression/readings/dimension.ts';
import type { Tree } from '../expression/tree.ts';
import { type Dimension, same } from '../quantity/dimension.ts';
import { TextError } from '../quantity/text-problem.ts';
import type { Unit } from '../quantity/unit.ts';
import { coherentUnit, describeDimension } from '../quantity/units.ts';
import type { Check, Circuit, Input, Result } from './board.ts';
import { mentioned, resolved, type Scope, scopeOf } from './names.ts';
import { ordered } from './order.ts';
import type { DraftCheck, DraftCircuit } from './read-circuit.ts';
import { hasKey, type Report } from './report.ts';
import { totalsOf } from './totals.ts';
import type { Path } from './yaml-file.ts';

/**
 * Gives every name its meaning and every equation its dimension, before anything is calculated: unknown names, loops
 * and units that disagree are reported here, each at its place.
 */
export function settle(
  report: Report,
  drafts: readonly DraftCircuit[],
  conditions: readonly Input[],
  derating: readonly Input[],
): { circuits: Circuit[]; totals: Result[] } {
  const totals = totalsOf(drafts);
  const everywhere = new Set(
    [...conditions, ...derating, ...totals, ...drafts.flatMap((d) => [...d.inputs, ...d.results])].map(({ id }) => id),
  );
  const named = drafts.map((draft) => withNames(report, draft, everywhere));
  if (report.problems.length) return { circuits: [], totals };
  const trees = new Map<string, Tree>(totals.map((total) => [total.id, total.tree]));
  for (const { inputs, results } of named) {
    for (const { id, value } of inputs) if (value.kind === 'expression') trees.set(id, value.tree);
    for (const { id, tree } of results) trees.set(id, tree);
  }
  const places = new Map(named.flatMap((draft) => [...draft.places]));
  const { order, loops } = ordered(everywhere, needsIn(named, trees));
  for (const loop of loops) {
    report.add(places.get(loop[0]!) ?? [], {
      code: 'loop',
      found: `a loop: ${[...loop, loop[0]!].join(' → ')}`,
      expected: 'equations that can be worked out one after another',
      hint: 'Solve the loop for one of its symbols and write that equation instead.',
    });
  }
  if (loops.length) return { circuits: [], totals };
  const dimensions = new Map<string, Dimension>();
  for (const input of [...conditions, ...derating, ...named.flatMap((d) => d.inputs)]) {
    if (input.value.kind !== 'expression') dimensions.set(input.id, input.unit.dimension);
  }
  const units = settleDimensions(report, named, totals, order, trees, dimensions);
  return {
    circuits: report.problems.length ? [] : named.map((draft) => finished(report, draft, dimensions, units)),
    totals,
  };
}

function withNames(report: Report, draft: DraftCircuit, everywhere: ReadonlySet<string>): DraftCircuit {
  const own = new Set([...draft.inputs, ...draft.results].map(({ symbol }) => symbol));
  const scope: Scope = scopeOf(draft.id, own, everywhere);
  const rename = (tree: Tree, path: Path): Tree => report.attempt(path, () => resolved(tree, scope)) ?? tree;
  const at = (id: string, key?: string): Path => {
    const path = draft.places.get(id) ?? ['circuits', draft.id];
    return key && path.at(-1) !== 'method' ? [...path, key] : path;
  };
  return {
    ...draft,
    inputs: draft.inputs.map((input) =>
      named(
        input,
        (tree) => rename(tree, at(input.id)),
        (of) => tracked(report, input, of, draft, at(input.id, 'tracks')),
      ),
    ),
    results: draft.results.map((result) => ({ ...result, tree: rename(result.tree, at(result.id, 'is')) })),
    checks: draft.checks.map((check) => nameCheck(check, draft, rename, at)),
    validity: draft.validity.map((check) => nameCheck(check, draft, rename, at)),
    firmware: draft.firmware.map((constant) => ({ ...constant, tree: rename(constant.tree, at(constant.id)) })),
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
    const tree = trees.get(id);
    if (!tree) continue;
    const unit = declared.get(id);
    const base = places.get(id) ?? [];
    const path = hasKey(report, base, 'is') ? [...base, 'is'] : base;
    const found = report.attempt(path, () => valueDimension(tree, dimensions, unit));
    dimensions.set(id, found ?? unit?.dimension ?? coherentUnit([0, 0, 0, 0, 0, 0, 0]).dimension);
    if (!unit && found) units.set(id, coherentUnit(found));
  }
  return units;
}

function valueDimension(tree: Tree, dimensions: ReadonlyMap<string, Dimension>, unit: Unit | undefined): Dimension {
  const found = dimensionOf(tree, (name) => dimensions.get(name)!);
  if (found === 'truth')
    throw new TextError({
      code: 'truth-as-value',
      ...tree.at,
      found: 'a comparison',
      expected: 'a number; use `if(condition, a, b)` to choose between two',
    });
  if (unit && !same(found, unit.dimension)) {
    throw new TextError({
      code: 'units-disagree',
      ...tree.at,
      found: `an expression of ${describeDimension(found)}`,
      expected: `one of ${describeDimension(unit.dimension)}, since the unit is ${unit.text || '1'}`,
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
  const { places, unitless, checks, validity, ...rest } = draft;
  const check = (one: DraftCheck): Check => {
    const path = places.get(`${draft.id}:${one.name}`) ?? [];
    const at = path.at(-1) === 'method' ? path : [...path, 'holds'];
    return {
      ...one,
      unit: report.attempt(at, () => limitUnit(one, draft, dimensions)) ?? coherentUnit([0, 0, 0, 0, 0, 0, 0]),
    };
  };
  const line = (input: Input): Input => ({ ...input, unit: units.get(input.id) ?? input.unit });
  return {
    ...rest,
    inputs: draft.inputs.map(line),
    firmware: draft.firmware.map((constant) => {
      const path = places.get(constant.id) ?? [];
      const found = report.attempt(path, () =>
        valueDimension(constant.tree, dimensions, unitless.has(constant.id) ? undefined : constant.unit),
      );
      return unitless.has(constant.id) && found ? { ...constant, unit: coherentUnit(found) } : constant;
    }),
    checks: checks.map(check),
    validity: validity.map(check),
  };
}

/** Both sides must be of one dimension; the slack is printed in the unit of the limit, or of what is limited. */
function limitUnit(check: DraftCheck, draft: DraftCircuit, dimensions: ReadonlyMap<string, Dimension>): Unit {
  const left = dimensionOf(check.left, (name) => dimensions.get(name)!);
  const right = dimensionOf(check.right, (name) => dimensions.get(name)!);
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
      found: `${describeDimension(left)} on the left and ${describeDimension(right)} on the right`,
      expected: 'the same on both sides',
    });
  }
  return typedUnit(check.right, draft) ?? typedUnit(check.left, draft) ?? coherentUnit(left);
}

function typedUnit(tree: Tree, draft: DraftCircuit): Unit | undefined {
  if (tree.kind === 'number') return tree.unit;
  if (tree.kind === 'symbol') return [...draft.inputs, ...draft.results].find(({ id }) => id === tree.name)?.unit;
  return undefined;
}
