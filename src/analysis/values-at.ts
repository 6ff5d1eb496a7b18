import { evaluate } from '../expression/readings/value.ts';
import type { Board } from '../spec/board.ts';
import type { Corner } from './findings.ts';
import { type Model, modelOf } from './model.ts';
import { fromPrinted } from './units.ts';

const models = new WeakMap<Board, Model>();

/** The model of a board, made once. */
export function modelFor(board: Board): Model {
  const known = models.get(board);
  if (known) return known;
  const model = modelOf(board);
  models.set(board, model);
  return model;
}

/**
 * Every input and result of a board, SI base units, with some variables moved from typical.
 * @param corner  variable id and its value in its own printed unit, as in `Findings`
 */
export function valuesAt(board: Board, corner: Corner): ReadonlyMap<string, number> {
  const model = modelFor(board);
  const at = Float64Array.from(model.variables, (variable) =>
    Object.hasOwn(corner, variable.id) ? fromPrinted(variable, corner[variable.id]!) : variable.typ,
  );
  const values = evaluate(model.tape, at);
  return new Map([...model.slots].map(([id, slot]) => [id, values[slot]!]));
}
