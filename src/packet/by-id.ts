import type { Findings } from '../analysis/findings.ts';
import type { Board, Input } from '../spec/board.ts';

/** A board with what was found about it. */
export interface Reviewed {
  readonly board: Board;
  readonly findings: Findings;
}

/** Everything that goes into a board, by id: conditions, derating factors and what circuits are given. */
export const inputsOf = ({ conditions, derating, circuits }: Board): ReadonlyMap<string, Input> =>
  byId([...conditions, ...derating, ...circuits.flatMap(({ inputs }) => inputs)]);

export const byId = <T extends { readonly id: string }>(all: readonly T[]): Map<string, T> =>
  new Map(all.map((one) => [one.id, one]));
