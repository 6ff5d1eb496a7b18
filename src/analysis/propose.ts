import { parseExpression } from '../expression/parse.ts';
import { evaluate, evaluateTree } from '../expression/readings/value.ts';
import { between } from '../quantity/preferred/nearest.ts';
import { seriesFor } from '../quantity/preferred/series.ts';
import { TextError, type TextProblem } from '../quantity/text-problem.ts';
import type { Board, Circuit, Input } from '../spec/board.ts';
import { mentioned, resolved, scopeOf } from '../spec/names.ts';
import { judge } from './check-finding.ts';
import type { ProposalFinding, ProposedFinding } from './findings.ts';
import { modelOf } from './model.ts';
import { inUnit, printedUnit } from './units.ts';
import { valuesAt } from './values-at.ts';
import { boxesOf } from './worst-case/box.ts';

/** A value may be exchanged for one within this factor of it, either way. */
const reach = 2;

/**
 * For every choice that a method offers: the preferred values that bring its result nearest to its target with everything
 * typical, beside those chosen, and the thinnest margin of the circuit's checks with each. Of two at the same distance the
 * one nearer to the chosen values is taken.
 */
export function proposalsOf(board: Board): ProposalFinding[] {
  return board.circuits.flatMap((circuit) =>
    Object.entries(circuit.method?.proposes ?? {}).flatMap(([name, { choose, of, target }]) => {
      const inputs = choose.map((symbol) => circuit.inputs.find((input) => input.symbol === symbol)!);
      if (!inputs.every(isBought)) return [];
      return [proposal(board, circuit, name, inputs, of, target)];
    }),
  );
}

/** Reading a method holds its targets to their names; one that is unknown here is a fault of the tool. */
const refuse = (problem: TextProblem): never => {
  throw new TextError(problem);
};

const isBought = ({ value }: Input): boolean =>
  (value.kind === 'part' || value.kind === 'exact') && ['number', 'tolerance'].includes(value.quantity.form);

function proposal(
  board: Board,
  circuit: Circuit,
  name: string,
  inputs: readonly Input[],
  of: string,
  target: string,
): ProposalFinding {
  const result = circuit.results.find(({ symbol }) => symbol === of)!;
  const known = valuesAt(board, {});
  const own = new Set([...circuit.inputs, ...circuit.results].map(({ symbol }) => symbol));
  const aim = evaluateTree(
    resolved(parseExpression(target), scopeOf(circuit.id, own, new Set(known.keys())), refuse),
    (id) => known.get(id)!,
  );
  const chosen = inputs.map(typical);
  const at = (values: readonly number[]) => worked(circuit, result.id, inputs, values, known);
  const best = nearestTo(aim, at, chosen, inputs.map(candidates));
  const found = (values: readonly number[]): ProposedFinding => ({
    values: Object.fromEntries(inputs.map((input, i) => [input.id, inUnit(values[i]!, input.unit)])),
    result: inUnit(at(values), result.unit),
    error: aim === 0 ? null : at(values) / aim - 1,
    ...thinnest(board, circuit, inputs, values),
  });
  return {
    id: `${circuit.id}.${name}`,
    of: result.id,
    unit: printedUnit(result.unit),
    target: inUnit(aim, result.unit),
    chosen: found(chosen),
    best: found(best),
    differs: best.some((value, i) => Math.abs(value / chosen[i]! - 1) > 1e-6),
  };
}

function typical({ id, value }: Input): number {
  if (value.kind === 'expression') throw new Error(`${id} follows from others`);
  return value.quantity.typ;
}

function candidates(input: Input): number[] {
  if (input.value.kind === 'expression') throw new Error(`${input.id} follows from others`);
  const { min, typ, max } = input.value.quantity;
  const tolerance = Math.max(max - typ, typ - min) / typ;
  return between(typ / reach, typ * reach, seriesFor(tolerance > 0 ? tolerance : 0.05));
}

/** A result of the circuit with other values for some inputs, everything else typical. */
function worked(
  circuit: Circuit,
  id: string,
  inputs: readonly Input[],
  values: readonly number[],
  known: ReadonlyMap<string, number>,
): number {
  const found = new Map(inputs.map((input, i) => [input.id, values[i]!]));
  const trees = new Map(circuit.results.map((result) => [result.id, result.tree]));
  const look = (name: string): number => {
    const value = found.get(name);
    if (value !== undefined) return value;
    const tree = trees.get(name);
    const fresh = tree ? evaluateTree(tree, look) : known.get(name)!;
    found.set(name, fresh);
    return fresh;
  };
  return look(id);
}

/**
 * The candidates, one a list, whose result lies nearest to `aim`. The last list must move the result one way, as a resistor
 * of a divider does: the nearest then stands beside where the result passes the aim, which halving finds.
 */
export function nearestTo(
  aim: number,
  at: (values: readonly number[]) => number,
  chosen: readonly number[],
  lists: readonly (readonly number[])[],
): number[] {
  const [first, last] = lists.length === 2 ? [lists[0]!, lists[1]!] : [undefined, lists[0]!];
  const heads: number[][] = first ? first.map((value) => [value]) : [[]];
  let best: { values: number[]; miss: number; move: number } | undefined;
  for (const head of heads)
    for (const tail of besides(aim, (value) => at([...head, value]), last)) {
      const values = [...head, tail];
      const miss = Math.abs(at(values) - aim);
      const move = values.reduce((sum, value, i) => sum + Math.abs(Math.log(value / chosen[i]!)), 0);
      const blur = 1e-12 * Math.abs(aim);
      if (!best || miss < best.miss - blur || (miss <= best.miss + blur && move < best.move - 1e-12))
        best = { values, miss, move };
    }
  return best!.values;
}

/** The two candidates between which `f` passes `aim`, or the end that comes nearest. */
function besides(aim: number, f: (x: number) => number, list: readonly number[]): number[] {
  const rises = f(list.at(-1)!) >= f(list[0]!);
  let [low, high] = [0, list.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (f(list[middle]!) <= aim === rises) low = middle;
    else high = middle;
  }
  return [list[low]!, list[high]!];
}

/** The thinnest margin among the circuit's checks that these inputs move, with the nominal values exchanged. */
function thinnest(
  board: Board,
  circuit: Circuit,
  inputs: readonly Input[],
  values: readonly number[],
): { margin: number | null; check: string | null } {
  const moved = movedBy(circuit, inputs);
  const model = modelOf(withValues(board, circuit, inputs, values));
  const boxes = boxesOf(board, model.variables);
  const typ = Float64Array.from(model.variables, (variable) => variable.typ);
  const nominal = evaluate(model.tape, typ);
  let least: { margin: number; check: string } | undefined;
  for (const check of model.checks) {
    if (check.circuit.id !== circuit.id || check.validity) continue;
    if (![...mentioned(check.check.left), ...mentioned(check.check.right)].some((id) => moved.has(id))) continue;
    const { margin } = judge(model, check, boxes, typ, nominal);
    if (margin !== null && (!least || margin < least.margin)) least = { margin, check: check.check.id };
  }
  return least ?? { margin: null, check: null };
}

/** Ids of the circuit that follow from the inputs, the inputs among them. */
function movedBy({ results }: Circuit, inputs: readonly Input[]): Set<string> {
  const moved = new Set(inputs.map(({ id }) => id));
  for (let before = -1; before !== moved.size; ) {
    before = moved.size;
    for (const { id, tree } of results) if ([...mentioned(tree)].some((name) => moved.has(name))) moved.add(id);
  }
  return moved;
}

function withValues(board: Board, circuit: Circuit, inputs: readonly Input[], values: readonly number[]): Board {
  const exchanged = circuit.inputs.map((input) => {
    const i = inputs.findIndex(({ id }) => id === input.id);
    return i < 0 ? input : scaled(input, values[i]!);
  });
  const circuits = board.circuits.map((one) => (one.id === circuit.id ? { ...one, inputs: exchanged } : one));
  return { ...board, circuits };
}

function scaled(input: Input, value: number): Input {
  if (input.value.kind !== 'part' && input.value.kind !== 'exact') return input;
  const { quantity } = input.value;
  const factor = value / quantity.typ;
  const moved = { ...quantity, min: quantity.min * factor, typ: value, max: quantity.max * factor };
  return { ...input, value: { ...input.value, quantity: moved } };
}
