import type { Board } from '../../spec/board.ts';
import type { Variable } from '../variable.ts';
import type { Ends } from './function.ts';

/** A range for every variable: everything that one operating case asks a board to endure. SI base units. */
export interface Box {
  readonly name?: string;
  readonly lo: Float64Array;
  readonly hi: Float64Array;
}

/** The whole range of every variable, or one box for each named operating case. */
export function boxesOf(board: Board, variables: readonly Variable[]): Box[] {
  const whole = {
    lo: Float64Array.from(variables, ({ min }) => min),
    hi: Float64Array.from(variables, ({ max }) => max),
  };
  if (!board.cases.length) return [whole];
  return board.cases.map(({ name, ranges }) => {
    const box = { name, lo: whole.lo.slice(), hi: whole.hi.slice() };
    variables.forEach(({ id }, i) => {
      const range = ranges.get(id);
      if (range) [box.lo[i], box.hi[i]] = [range.min, range.max];
    });
    return box;
  });
}

/** A box in the variables of one function. */
export const within = ({ lo, hi }: Box, variables: readonly number[]): Ends => ({
  lo: Float64Array.from(variables, (v) => lo[v]!),
  hi: Float64Array.from(variables, (v) => hi[v]!),
});

/** From the least to the greatest value that any operating case gives a variable. */
export const endsOf = (boxes: readonly Box[], v: number): [low: number, high: number] => [
  Math.min(...boxes.map(({ lo }) => lo[v]!)),
  Math.max(...boxes.map(({ hi }) => hi[v]!)),
];
