import { find } from '../../src/analysis/find.ts';
import type { Findings } from '../../src/analysis/findings.ts';
import { showProblems } from '../../src/spec/problem.ts';
import { readSpec } from '../../src/spec/read-spec.ts';

/**
 * Findings about one circuit `c` that is written in place, as YAML text of its `given`, `equations` and `checks`.
 * @example findInPlace('given: { R: 1 kohm ±1 % }\nequations: { G: { is: 1 / R, unit: S, says: Conductance } }')
 */
export function findInPlace(circuit: string, trials = 100_000): Findings {
  const indented = circuit.trim().replaceAll('\n', '\n    ');
  const text = `board: Published case
document: P-1
revision: A
issued: 2026-01-01
status: draft
purpose: Figures published elsewhere
circuits:
  c:
    ${indented}
`;
  const source = { file: 'published.yaml', board: 'published', revision: 'a' };
  const { board, problems } = readSpec(text, source, { methods: new Map(), policies: new Map() });
  if (!board) throw new Error(showProblems(problems));
  return find(board, { seed: 1, trials, digest: '', tool: 'test' });
}
