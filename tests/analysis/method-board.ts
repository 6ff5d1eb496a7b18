import type { Board } from '../../src/spec/board.ts';
import { showProblems } from '../../src/spec/problem.ts';
import { readSpec } from '../../src/spec/read-spec.ts';
import { handbook } from '../handbook.ts';

/** A board of one circuit that uses a method of the handbook. */
export function methodBoard(circuit: string, method: string, given: Record<string, string>): Board {
  const lines = Object.entries(given).map(([key, text]) => `      ${key}: ${text}`);
  const text = `board: One method
document: D-1
revision: A
issued: 2026-01-01
status: draft
purpose: Preferred values
circuits:
  ${circuit}:
    method: ${method}
    given:
${lines.join('\n')}
`;
  const { board, problems } = readSpec(text, { file: 'd.yaml', board: 'd', revision: 'a' }, handbook);
  if (!board) throw new Error(showProblems(problems));
  return board;
}
