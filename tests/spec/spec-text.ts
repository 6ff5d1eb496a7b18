import { showProblems } from '../../src/spec/problem.ts';
import { type ReadSpec, readSpec } from '../../src/spec/read-spec.ts';
import { handbook } from '../handbook.ts';

const head = `board: Lift table drive
document: LT-7
revision: A
issued: 2026-02-02
status: draft
purpose: Raises and lowers a work table.
`;

/** A spec with the keys that every spec needs before the given ones; line 7 is the first of `rest`. */
export const spec = (rest: string): string => head + rest;

export const read = (text: string): ReadSpec =>
  readSpec(text, { file: 'spec.yaml', board: 'lift-table', revision: 'rev-a' }, handbook);

/** What an engineer would read on the terminal. */
export const messagesFor = (rest: string): string => showProblems(read(spec(rest)).problems);

/** The board of a spec that has no problem. */
export function boardFrom(rest: string) {
  const { board, problems } = read(spec(rest));
  if (!board) throw new Error(showProblems(problems));
  return board;
}
