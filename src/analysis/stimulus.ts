import { evaluate } from '../expression/readings/value.ts';
import { same } from '../quantity/dimension.ts';
import { kinds } from '../quantity/kinds.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Unit } from '../quantity/unit.ts';
import type { Board, Circuit, Input, TestPoint } from '../spec/board.ts';
import { drawnVariables } from './correlation.ts';
import type { AcceptFinding, SpreadFinding, StimulusFinding } from './findings.ts';
import { type Model, modelOf } from './model.ts';
import { neededBoard } from './needed-board.ts';
import { shareBelow } from './share-below.ts';
import { atCorners } from './simulate/at-corners.ts';
import { type Counting, type SimulationOptions, simulate } from './simulate/simulate.ts';
import { spreadFinding } from './spread-finding.ts';
import { inUnit, printedUnit } from './units.ts';
import type { Variable } from './variable.ts';
import { Search } from './worst-case/extremes.ts';
import { BoardFunction } from './worst-case/function.ts';

export interface StimulusOptions extends SimulationOptions {
  readonly counting?: Counting;
}

/**
 * What a tester reads at a test point on a new board: expected value, worst case over all parts, and spread, with the
 * stimulus applied, every other condition at typical, and nothing aged yet.
 */
export function stimulusFindings(board: Board, options: StimulusOptions): StimulusFinding[] {
  return board.circuits.flatMap((circuit) =>
    circuit.testPoints.map((point) => stimulusFinding(board, circuit, point, options)),
  );
}

export function stimulusFinding(
  board: Board,
  circuit: Circuit,
  point: TestPoint,
  options: StimulusOptions,
): StimulusFinding {
  const model = modelOf(neededBoard(stimulated(board, circuit, point), point.reads));
  const result = model.results.find(({ id }) => id === point.reads)!;
  const slot = model.slots.get(point.reads)!;
  const typical = Float64Array.from(model.variables, ({ typ }) => typ);
  const box = { lo: bench(model, 'min'), hi: bench(model, 'max') };
  const search = new Search(new BoardFunction(model.tape, slot), [box], typical);
  const [min, max] = [search.min(), search.max()];
  const fresh = {
    ...model,
    variables: model.variables.map((variable) =>
      variable.what === 'ageing' ? { ...variable, draw: { kind: 'held' as const } } : variable,
    ),
  };
  const parts = atCorners(fresh.tape, fresh.variables, [{ slot, at: typical }], model.correlated);
  const variables = drawnVariables(fresh.variables, model.correlated);
  const spread = simulate(parts, variables, { counted: [false], decides: [false] }, options, options.counting)
    .spreads[0]!;
  const prediction = {
    expected: inUnit(evaluate(model.tape, typical)[slot]!, result.unit),
    min: inUnit(min.bound, result.unit),
    max: inUnit(max.bound, result.unit),
    spread: spreadFinding(spread, {}, result.unit, inUnit),
  };
  const held = heldConditions(model, slot, point);
  return {
    id: `${circuit.id}.${point.name}`,
    reads: point.reads,
    unit: printedUnit(result.unit),
    when: Object.fromEntries(
      [...point.when].map(([symbol, { typ, unit }]) => [symbol, { value: inUnit(typ, unit), unit: printedUnit(unit) }]),
    ),
    ...prediction,
    step: point.step ?? (flows(point, held) ? 'load' : 'supply'),
    held: Object.fromEntries(
      held.map(({ id, typ, input }) => [id, { value: inUnit(typ, input.unit), unit: printedUnit(input.unit) }]),
    ),
    accept: point.uncertainty ? acceptance(prediction, point.uncertainty, result.unit) : null,
  };
}

/** Conditions that move the reading and that the stimulus leaves as they are. */
function heldConditions(model: Model, slot: number, point: TestPoint): Variable[] {
  const { variables } = new BoardFunction(model.tape, slot);
  return variables
    .map((index) => model.variables[index]!)
    .filter(
      ({ role, what, id }) =>
        role === 'condition' && what === 'value' && !point.when.has(id) && !point.when.has(id.split('.').at(-1)!),
    );
}

/** From this current on a step belongs to those under load: less, a bench supply gives. */
const loadCurrent = 1;

const flows = ({ when }: TestPoint, held: readonly Variable[]): boolean =>
  [...when.values(), ...held.map(({ typ, input: { unit } }) => ({ typ, unit }))].some(
    ({ typ, unit }) => same(unit.dimension, kinds.current.of) && Math.abs(typ) >= loadCurrent,
  );

function acceptance(
  { expected, min, max, spread }: Pick<StimulusFinding, 'expected' | 'min' | 'max' | 'spread'>,
  stated: Quantity,
  unit: Unit,
): AcceptFinding {
  const isShare = !same(stated.unit.dimension, unit.dimension);
  const uncertainty = isShare ? stated.typ * Math.abs(expected) : stated.typ / unit.scale;
  // What no part moves may differ from its value by what the meter is uncertain of.
  const [from, to] = max > min ? [min + uncertainty, max - uncertainty] : [min - uncertainty, max + uncertainty];
  return { uncertainty, from, to, refused: spread && max > min ? refusedBy(spread, from, to) : null };
}

const refusedBy = (spread: SpreadFinding, from: number, to: number): number =>
  from > to ? 1 : shareBelow(spread, from) + 1 - shareBelow(spread, to);
/** Conditions stand where the bench puts them; parts vary; ageing has not begun. */
const bench = (model: Model, end: 'min' | 'max'): Float64Array =>
  Float64Array.from(model.variables, (variable) =>
    variable.role === 'condition' || variable.what === 'ageing' ? variable.typ : variable[end],
  );

/** The board with the stimulus in the place of what feeds the circuit in service; another circuit's input by its whole id. */
function stimulated(board: Board, circuit: Circuit, point: TestPoint): Board {
  const replaced = (input: Input, own: boolean): Input => {
    const quantity = point.when.get(input.id) ?? (own ? point.when.get(input.symbol) : undefined);
    return quantity ? { ...input, value: applied(quantity) } : input;
  };
  return {
    ...board,
    conditions: board.conditions.map((input) => replaced(input, true)),
    circuits: board.circuits.map((one) => ({
      ...one,
      inputs: one.inputs.map((input) => replaced(input, one.id === circuit.id)),
    })),
  };
}

const applied = (quantity: Quantity): Input['value'] => ({
  kind: quantity.form === 'number' ? 'exact' : quantity.form === 'range' ? 'condition' : 'part',
  quantity,
});
