import { judge } from '../analysis/check-finding.ts';
import { referencePoint, searchResult } from '../analysis/result-finding.ts';
import { atCorners, type PartsTape, type Target } from '../analysis/simulate/at-corners.ts';
import { type Boards, boardsOf } from '../analysis/simulate/boards.ts';
import { type Counting, type Simulation, type Slacks, simulate } from '../analysis/simulate/simulate.ts';
import { modelFor } from '../analysis/values-at.ts';
import type { Variable } from '../analysis/variable.ts';
import { boxesOf } from '../analysis/worst-case/box.ts';
import { evaluate } from '../expression/readings/value.ts';
import type { Board } from '../spec/board.ts';
import { madeUpBoard } from './made-up-board.ts';

/** Something to be simulated by every contestant. */
export interface Subject {
  readonly name: string;
  readonly parts: PartsTape;
  readonly variables: readonly Variable[];
  readonly slacks: Slacks;
}

export const seed = 1;

export function madeUpSubject(equations = 150): Subject {
  const { tape, outputs, variables } = madeUpBoard(equations);
  const all = outputs.map(() => true);
  return {
    name: `made-up board, ${equations} equations`,
    parts: { tape, outputs },
    variables,
    slacks: { counted: all, decides: all },
  };
}

/**
 * A board as it is simulated for its packet: every check at its worst corner, every result at that of its thinnest
 * check.
 */
export function boardSubject(board: Board): Subject {
  const model = modelFor(board);
  const boxes = boxesOf(board, model.variables);
  const typical = Float64Array.from(model.variables, ({ typ }) => typ);
  const nominal = evaluate(model.tape, typical);
  const judged = model.checks.map((check) => judge(model, check, boxes, typical, nominal));
  const searched = model.results.map((result) => searchResult(model, result, boxes, typical, nominal));
  const targets: Target[] = [
    ...judged.map(({ from, least }) => ({ slot: from.simulated, at: least.at })),
    ...searched.map((one) => ({ slot: model.simulated.get(one.result.id)!, at: referencePoint(one, judged) })),
  ];
  const isCheck = targets.map((_, i) => i < judged.length);
  return {
    name: `${board.name}/${board.revision}`,
    parts: atCorners(model.tape, model.variables, targets),
    variables: model.variables,
    slacks: { counted: isCheck, decides: isCheck },
  };
}

export const boardsFor = ({ parts, variables, slacks }: Subject): Boards => boardsOf(parts, variables, slacks, seed);

export function run({ parts, variables, slacks }: Subject, trials: number, counting?: Counting): Simulation {
  return simulate(parts, variables, slacks, { seed, trials }, counting);
}
