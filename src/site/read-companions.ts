import { readBench } from '../spec/bench/read-bench.ts';
import type { Board } from '../spec/board.ts';
import type { Problem } from '../spec/problem.ts';
import type { DesignFolder } from './designs.ts';

/** The board with what stands beside its spec: bench results. Or every problem of those files. */
export function withCompanions(
  board: Board,
  { files }: DesignFolder,
  pathOf: (name: string) => string,
): { board: Board; problems: readonly Problem[] } {
  const csv = files.get('bench.csv');
  const bench = csv === undefined ? undefined : readBench(csv, pathOf('bench.csv'), board);
  return { board: { ...board, ...(bench ? { bench: bench.readings } : {}) }, problems: bench?.problems ?? [] };
}
