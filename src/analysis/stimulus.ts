import { evaluate } from '../expression/readings/value.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Board, Circuit, Input, TestPoint } from '../spec/board.ts';
import { drawnVariables } from './correlation.ts';
import type { StimulusFinding } from './findings.ts';
import { type Model, modelOf } from './model.ts';
import { atCorners } from './simulate/at-corners.ts';
import { type Counting, type SimulationOptions, simulate } from './simulate/simulate.ts';
import { spreadFinding } from './spread-finding.ts';
import { inUnit, printedUnit } from './units.ts';
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
  const model = modelOf(stimulated(board, circuit, point));
  const result = model.results.find(({ id }) => id === point.reads)!;
  const slot = model.slots.get(point.reads)!;
  const typical = Float64Array.from(model.variables, ({ typ }) => typ);
  const held = { lo: bench(model, 'min'), hi: bench(model, 'max') };
  const search = new Search(new BoardFunction(model.tape, slot), [held], typical);
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
  return {
    id: `${circuit.id}.${point.name}`,
    reads: point.reads,
    unit: printedUnit(result.unit),
    when: Object.fromEntries(
      [...point.when].map(([symbol, { typ, unit }]) => [symbol, { value: inUnit(typ, unit), unit: printedUnit(unit) }]),
    ),
    expected: inUnit(evaluate(model.tape, typical)[slot]!, result.unit),
    min: inUnit(min.bound, result.unit),
    max: inUnit(max.bound, result.unit),
    spread: spreadFinding(spread, {}, result.unit, inUnit),
  };
}

/** Conditions stand where the bench puts them; parts vary; ageing has not begun. */
const bench = (model: Model, end: 'min' | 'max'): Float64Array =>
  Float64Array.from(model.variables, (variable) =>
    variable.role === 'condition' || variable.what === 'ageing' ? variable.typ : variable[end],
  );

/** The board with the stimulus in the place of what feeds the circuit in service. */
function stimulated(board: Board, circuit: Circuit, point: TestPoint): Board {
  const replaced = (input: Input): Input => {
    const quantity = point.when.get(input.symbol);
    return quantity ? { ...input, value: applied(quantity) } : input;
  };
  return {
    ...board,
    conditions: board.conditions.map(replaced),
    circuits: board.circuits.map((one) => (one.id === circuit.id ? { ...one, inputs: one.inputs.map(replaced) } : one)),
  };
}

const applied = (quantity: Quantity): Input['value'] => ({
  kind: quantity.form === 'number' ? 'exact' : quantity.form === 'range' ? 'condition' : 'part',
  quantity,
});
