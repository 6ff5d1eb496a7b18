import { readBench } from '../spec/bench/read-bench.ts';
import type { Board } from '../spec/board.ts';
import { readNotes } from '../spec/notes/read-notes.ts';
import type { Problem } from '../spec/problem.ts';
import type { DesignFolder } from './designs.ts';

/** The board with what stands beside its spec: bench results and notes. Or every problem of those files. */
export function withCompanions(
  board: Board,
  { files }: DesignFolder,
  pathOf: (name: string) => string,
): { board: Board; problems: readonly Problem[] } {
  const csv = files.get('bench.csv');
  const bench = csv === undefined ? undefined : readBench(csv, pathOf('bench.csv'), board);
  const mdx = files.get('notes.mdx');
  const notes = mdx === undefined ? undefined : readNotes(mdx, pathOf('notes.mdx'), board);
  return {
    board: { ...board, ...(bench ? { bench: bench.readings } : {}), ...(notes ? { notes: notes.notes } : {}) },
    problems: [...(bench?.problems ?? []), ...(notes?.problems ?? [])],
  };
}
