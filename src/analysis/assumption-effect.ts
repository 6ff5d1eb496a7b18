import { evaluate, evaluateTree } from '../expression/readings/value.ts';
import type { Tree } from '../expression/tree.ts';
import type { Board, Input } from '../spec/board.ts';
import { mentioned } from '../spec/names.ts';
import type { JudgedCheck } from './check-finding.ts';
import type { AssumptionEffect } from './findings.ts';
import type { Model } from './model.ts';
import { differenceInUnit, inUnit } from './units.ts';

/** A value with no stated range may be wrong by this share of itself, a temperature by so many kelvin: customs, printed where used. */
export const unstated = { share: 0.1, kelvin: 5 };

/**
 * What each of several values may cost if it is wrong by half its stated range, or by a tenth where none is stated: the check
 * whose margin that eats most of, at its own worst corner, everything else as it is there.
 * @returns one for each id, in their order; null where no check that could be assessed hangs on it
 */
export function effectsOf(
  board: Board,
  model: Model,
  judged: readonly JudgedCheck[],
  inputs: readonly Input[],
): (AssumptionEffect | null)[] {
  const cones = new Cones(board);
  const watched = judged.filter(
    ({ margin, reason, from }) => margin !== null && reason === undefined && !from.validity,
  );
  const values = new Map<JudgedCheck, ReadonlyMap<string, number>>();
  const cornerOf = (one: JudgedCheck): ReadonlyMap<string, number> => {
    const known = values.get(one);
    if (known) return known;
    const slots = evaluate(model.tape, one.least.at);
    const found = new Map([...model.slots].map(([id, slot]) => [id, slots[slot]!]));
    values.set(one, found);
    return found;
  };
  return inputs.map((input) => {
    const off = offOf(input);
    const variable = model.variables.findIndex(({ id }) => id === input.id);
    const slackWith = variable >= 0 ? byVariable(variable) : byTrees(cones, input.id, cornerOf);
    const effects = watched.flatMap((one): { eats: number; effect: AssumptionEffect }[] => {
      const lost = slackWith(one, off);
      const margin = lost === undefined ? 0 : shareOfLimit(one, lost);
      const effect = { off: off.size, off_unit: off.unit, stated: off.stated, check: one.from.check.id, margin };
      return margin > 0 ? [{ eats: margin / Math.max(0.01, one.margin!), effect }] : [];
    });
    return effects.toSorted((a, b) => b.eats - a.eats)[0]?.effect ?? null;
  });
}

interface Off {
  readonly size: number;
  readonly unit: '1' | 'K';
  readonly stated: boolean;
}

/** How far a value may be wrong: as a share of it, a temperature in kelvin. */
function offOf({ value, unit }: Input): Off {
  const [size, printed] = unit.offset === 0 ? [unstated.share, '1' as const] : [unstated.kelvin, 'K' as const];
  if (value.kind === 'expression') return { size, unit: printed, stated: false };
  const { min, typ, max } = value.quantity;
  const half = (max - min) / 2 / (unit.offset === 0 ? Math.abs(typ) : 1);
  return half > 0 && Number.isFinite(half)
    ? { size: half, unit: printed, stated: true }
    : { size, unit: printed, stated: false };
}

const wrong = (value: number, { size, unit }: Off): number[] =>
  unit === 'K' ? [value - size, value + size] : [value * (1 - size), value * (1 + size)];

/** Slack lost at most, SI base units; undefined where the check does not hang on the value. */
type Lost = (one: JudgedCheck, off: Off) => number | undefined;

/** A value that is a variable is moved in the check itself. */
const byVariable =
  (variable: number): Lost =>
  ({ f, least }, off) => {
    const at = f.variables.indexOf(variable);
    if (at < 0) return undefined;
    const corner = Float64Array.from(f.variables, (v) => least.at[v]!);
    return f.value(corner) - Math.min(...wrong(corner[at]!, off).map((x) => f.value(corner.with(at, x))));
  };

/** A value that was worked into the equations is put into them again. */
function byTrees(cones: Cones, id: string, cornerOf: (one: JudgedCheck) => ReadonlyMap<string, number>): Lost {
  const cone = cones.above(id);
  return (one, off) => {
    const { left, right, sense } = one.from.check;
    if (![...mentioned(left), ...mentioned(right)].some((name) => cone.has(name))) return undefined;
    const corner = cornerOf(one);
    const slack = (value: number): number => {
      const lookup = cones.lookup(corner, id, value, cone);
      const [a, b] = [evaluateTree(left, lookup), evaluateTree(right, lookup)];
      return sense === 'atMost' ? b - a : a - b;
    };
    const here = corner.get(id)!;
    return slack(here) - Math.min(...wrong(here, off).map(slack));
  };
}

function shareOfLimit({ from, limit }: JudgedCheck, lost: number): number {
  const share = differenceInUnit(lost, from.check.unit) / Math.abs(inUnit(limit, from.check.unit));
  return Number.isFinite(share) ? Math.max(0, share) : 0;
}

/** What of a board has to be worked out again when one value changes. */
class Cones {
  readonly #trees = new Map<string, Tree>();
  readonly #users = new Map<string, string[]>();

  constructor({ circuits, totals }: Board) {
    for (const { results, inputs } of circuits) {
      for (const { id, tree } of results) this.#add(id, tree);
      for (const { id, value } of inputs) if (value.kind === 'expression') this.#add(id, value.tree);
    }
    for (const { id, tree } of totals) this.#add(id, tree);
  }

  #add(id: string, tree: Tree): void {
    this.#trees.set(id, tree);
    for (const used of mentioned(tree)) this.#users.set(used, [...(this.#users.get(used) ?? []), id]);
  }

  /** An id and everything that follows from it. */
  above(id: string): Set<string> {
    const found = new Set<string>();
    const open = [id];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (found.has(next)) continue;
      found.add(next);
      open.push(...(this.#users.get(next) ?? []));
    }
    return found;
  }

  /** Values at a corner with one of them changed. */
  lookup(
    corner: ReadonlyMap<string, number>,
    id: string,
    value: number,
    cone: ReadonlySet<string>,
  ): (id: string) => number {
    const fresh = new Map([[id, value]]);
    const lookup = (name: string): number => {
      const known = fresh.get(name) ?? (cone.has(name) ? undefined : corner.get(name));
      if (known !== undefined) return known;
      const tree = this.#trees.get(name);
      // A drifting part whose temperature follows from the value keeps the drift of the corner.
      const found = tree ? evaluateTree(tree, lookup) : corner.get(name)!;
      fresh.set(name, found);
      return found;
    };
    return lookup;
  }
}
