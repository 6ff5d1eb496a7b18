import type { Circuit } from '../../spec/board.ts';
import type { SweepFinding, SweepLeftOut } from '../findings.ts';
import { endsOf } from '../worst-case/box.ts';
import { BoardFunction } from '../worst-case/function.ts';
import { type Axis, axisOf, type Setting } from './axis.ts';
import { Curves } from './curves.ts';

/** All variables of the board at the worst corners of a result and of a check. */
export type Corners = (result: string, check: string | undefined) => readonly Float64Array[];

export interface Sweeps {
  readonly drawn: readonly SweepFinding[];
  readonly leftOut: readonly SweepLeftOut[];
}

/**
 * Every plot that the circuits ask for: the result over its axis with everything else typical, and the least and greatest
 * over everything else at each point.
 * @param corners  where the worst cases of a result and of a check lie: these places are put on the curve
 */
export function sweepsOf(setting: Setting, corners: Corners): Sweeps {
  const known = new Map<string, Axis | string>();
  const axisFor = (circuit: string, over: string): Axis | string => {
    const key = `${circuit} ${over}`;
    const found = known.get(key) ?? axisOf(setting, circuit, over);
    known.set(key, found);
    return found;
  };
  const asked = setting.board.circuits.flatMap((circuit) =>
    circuit.plots.map((plot) => sweepOf(setting, circuit, plot, axisFor, corners)),
  );
  const all = [...asked, ...heatOver(setting, corners)];
  return {
    drawn: all.filter((one) => 'runs' in one),
    leftOut: all.filter((one) => 'reason' in one),
  };
}

function sweepOf(
  setting: Setting,
  circuit: Circuit,
  plot: Circuit['plots'][number],
  axisFor: (circuit: string, over: string) => Axis | string,
  corners: Corners,
): SweepFinding | SweepLeftOut {
  const named = (symbol: string) => (symbol.includes('.') ? symbol : `${circuit.id}.${symbol}`);
  const over = setting.board.conditions.some(({ id }) => id === plot.over) ? plot.over : named(plot.over);
  const of = named(plot.of);
  const leftOut = (reason: string): SweepLeftOut => ({ circuit: circuit.id, of, over, reason });
  if (!setting.model.results.some(({ id }) => id === of)) return leftOut(`nothing on this board is called ${of}`);
  const axis = axisFor(circuit.id, over);
  if (typeof axis === 'string') return leftOut(axis);
  const check = plot.limit === undefined ? undefined : named(plot.limit);
  const curves = new Curves(axis, of, check);
  if (!curves.moves()) return leftOut(`${of} does not depend on ${over} on this board`);
  const found = curves.finding(setting.model, circuit.id, corners(of, check));
  return found.runs.some((run) => run.length > 1) ? found : leftOut(`${of} is not defined along ${over}`);
}

/** The heat of the whole board over the condition that moves it most, as a reviewer of the housing asks for it. */
function heatOver(setting: Setting, corners: Corners): SweepFinding[] {
  const { model, boxes, typical } = setting;
  const slot = model.slots.get('board.heat');
  if (slot === undefined || !setting.board.totals.some(({ id }) => id === 'board.heat')) return [];
  const f = new BoardFunction(model.tape, slot);
  const at = Float64Array.from(f.variables, (v) => typical[v]!);
  const swings = f.variables.flatMap((v, i) => {
    const { role, id } = model.variables[v]!;
    if (role !== 'condition' || !setting.board.conditions.some((condition) => condition.id === id)) return [];
    const [low, high] = endsOf(boxes, v);
    return [{ id, swing: Math.abs(f.value(at.with(i, high)) - f.value(at.with(i, low))) }];
  });
  const most = swings.toSorted((a, b) => b.swing - a.swing)[0];
  const axis = most && most.swing > 0 ? axisOf(setting, 'board', most.id) : undefined;
  if (!axis || typeof axis === 'string') return [];
  return [new Curves(axis, 'board.heat', undefined).finding(model, 'board', corners('board.heat', undefined))];
}
