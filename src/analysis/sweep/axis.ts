import { isPure } from '../../quantity/dimension.ts';
import type { Board, Input } from '../../spec/board.ts';
import type { SweepAxis } from '../findings.ts';
import { type Model, modelOf } from '../model.ts';
import { type Box, boxesOf } from '../worst-case/box.ts';
import { Search } from '../worst-case/extremes.ts';
import { BoardFunction } from '../worst-case/function.ts';
import { partOfBoard } from './part-of-board.ts';
import { inputsById, rootOf } from './root-of.ts';

/** A board with the ranges over which its worst cases are sought. */
export interface Setting {
  readonly board: Board;
  readonly model: Model;
  readonly boxes: readonly Box[];
  readonly typical: Float64Array;
  /** Typical value in every slot of the tape. */
  readonly nominal: Float64Array;
}

/** What a plot is drawn over: one variable of a board, and how far it goes. SI base units. */
export interface Axis {
  readonly setting: Pick<Setting, 'model' | 'boxes' | 'typical'>;
  readonly variable: number;
  /** The input as the method names it. */
  readonly input: Input;
  /** What stands behind it: a condition, a part, or the result that feeds it. */
  readonly root: string;
  readonly span: SweepAxis;
  readonly from: number;
  readonly to: number;
  readonly typ: number;
}

/** How far a part's value is tried to either side of the chosen one. */
const reach = 2;

/**
 * Finds what a plot is drawn over. A condition goes over what must be endured; a value that others feed, over the range in
 * which they can bring it, moved by itself; a chosen value, from half to twice of what was chosen.
 * @param circuit  whose results are drawn
 * @returns the reason as a sentence where nothing on this board can be moved
 */
export function axisOf(setting: Setting, circuit: string, overId: string): Axis | string {
  const inputs = inputsById(setting.board);
  const input = inputs.get(overId);
  if (!input) return `nothing on this board is called ${overId}`;
  const root = rootOf(inputs, overId);
  const own = inputs.get(root);
  const variable = setting.model.variables.findIndex(({ id }) => id === root);
  if (own && variable >= 0) return moved(setting, variable, input, root);
  return own && own.value.kind !== 'expression'
    ? chosenConstant(setting, circuit, input, own)
    : fedFromElsewhere(setting, circuit, input, root);
}

/** The axis is a variable already. */
function moved(setting: Setting, variable: number, input: Input, root: string): Axis | string {
  const { min, typ, max, role } = setting.model.variables[variable]!;
  if (role === 'condition') {
    const from = Math.min(...setting.boxes.map(({ lo }) => lo[variable]!));
    const to = Math.max(...setting.boxes.map(({ hi }) => hi[variable]!));
    if (from === to) return `${root} is one fixed value on this board`;
    return { setting, variable, input, root, span: 'condition', from, to, typ };
  }
  if (!scales(setting.model.variables[variable]!.input, typ)) return `${root} is one fixed value on this board`;
  const ends = { from: Math.min(typ / reach, min), to: Math.max(typ * reach, max) };
  return { setting, variable, input, root, span: 'choice', ...ends, typ };
}

/** Half and twice mean something for a size above nought; not for a ratio, which has ends of its own, or a temperature. */
const scales = ({ unit }: Input, typ: number): boolean => typ > 0 && unit.offset === 0 && !isPure(unit.dimension);

/** A value that is the same on every board was worked into the equations: it is freed again. */
function chosenConstant(setting: Setting, circuit: string, input: Input, own: Input): Axis | string {
  if (own.value.kind === 'expression') throw new Error(`${own.id} follows from others`);
  const { typ } = own.value.quantity;
  if (!scales(own, typ)) return `${own.id} is one fixed value on this board`;
  return freed(setting, circuit, input, own.id, { from: typ / reach, typ, to: typ * reach }, 'choice');
}

function fedFromElsewhere(setting: Setting, circuit: string, input: Input, root: string): Axis | string {
  const { model, boxes, typical, nominal } = setting;
  const slot = model.slots.get(root);
  if (slot === undefined) return `nothing on this board feeds ${input.id}`;
  const search = new Search(new BoardFunction(model.tape, slot), boxes, typical, { tolerance: 1e-4, budget: 300 });
  const [from, to] = [search.min().value, search.max().value];
  const typ = nominal[slot]!;
  if (![from, typ, to].every(Number.isFinite)) return `${root} is not defined everywhere`;
  if (to - from > 1e-9 * Math.abs(typ)) return freed(setting, circuit, input, root, { from, typ, to }, 'result');
  if (!scales(input, typ)) return `${root} is one fixed value on this board`;
  return freed(setting, circuit, input, root, { from: typ / reach, typ, to: typ * reach }, 'choice');
}

/** A board on which the input, and whatever hands on the same value, may be moved by itself. */
function freed(
  { board }: Setting,
  circuit: string,
  input: Input,
  root: string,
  { from, typ, to }: { from: number; typ: number; to: number },
  span: SweepAxis,
): Axis {
  const inputs = inputsById(board);
  const place = inputs.has(root) ? root : input.id;
  const quantity = { form: 'range' as const, text: '', unit: input.unit, min: from, typ, max: to };
  const free = (one: Input): Input => {
    if (one.id === place) return { ...one, value: { kind: 'condition', quantity } };
    if (one.value.kind !== 'expression' || rootOf(inputs, one.id) !== root) return one;
    return { ...one, value: { ...one.value, tree: { kind: 'symbol', name: place, at: one.value.tree.at } } };
  };
  const other: Board = {
    ...board,
    conditions: board.conditions.map(free),
    circuits: board.circuits.map((one) => ({ ...one, inputs: one.inputs.map(free) })),
  };
  const model = modelOf(partOfBoard(other, circuit));
  const setting = {
    model,
    boxes: boxesOf(other, model.variables),
    typical: Float64Array.from(model.variables, (variable) => variable.typ),
  };
  const variable = model.variables.findIndex(({ id }) => id === place);
  return { setting, variable, input, root, span, from, to, typ };
}
