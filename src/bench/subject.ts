import { searchBoard, simulatedParts } from '../analysis/searched-board.ts';
import type { PartsTape } from '../analysis/simulate/at-corners.ts';
import { type Boards, boardsOf } from '../analysis/simulate/boards.ts';
import { type Counting, type Simulation, type Slacks, simulate } from '../analysis/simulate/simulate.ts';
import type { Variable } from '../analysis/variable.ts';
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
  const found = searchBoard(board);
  const { parts, variables } = simulatedParts(found);
  const isCheck = parts.outputs.map((_, i) => i < found.judged.length);
  return {
    name: `${board.name}/${board.revision}`,
    parts,
    variables,
    slacks: { counted: isCheck, decides: isCheck },
  };
}

export const boardsFor = ({ parts, variables, slacks }: Subject): Boards => boardsOf(parts, variables, slacks, seed);

export function run({ parts, variables, slacks }: Subject, trials: number, counting?: Counting): Simulation {
  return simulate(parts, variables, slacks, { seed, trials }, counting);
}
