import { stringify } from 'yaml';
import { evaluateTree } from '../expression/readings/value.ts';
import type { Board } from './board.ts';
import type { Handbook, Method } from './method-schema.ts';
import { showProblems } from './problem.ts';
import { readSpec } from './read-spec.ts';

/**
 * One method worked out at nominal, for its example and for tests.
 * @param given  symbol and quantity text; symbols with a usual value may be left out
 * @returns every symbol, result and firmware constant of the method, SI base units
 */
export function workMethod(
  method: Method,
  given: Readonly<Record<string, string>>,
  policies: Handbook['policies'] = new Map(),
): Record<string, number> {
  return nominalOf(methodBoard(method, given, policies));
}

/**
 * A board that is one circuit `it` of a method, with the values given and the first of the policies.
 * @throws Error with the problems in words, when the values do not fit the method
 */
export function methodBoard(
  method: Method,
  given: Readonly<Record<string, string>>,
  policies: Handbook['policies'] = new Map(),
): Board {
  const derating = policies.keys().next().value;
  const spec = stringify({
    board: 'Worked example',
    document: 'X',
    revision: 'A',
    issued: '2026-01-01',
    status: 'draft',
    purpose: 'One method',
    ...(derating ? { margins: { derating } } : {}),
    conditions: { T_amb: '25 degC' },
    circuits: { it: { method: method.id, given } },
  });
  const { board, problems } = readSpec(
    spec,
    { file: `example of ${method.id}`, board: 'example', revision: 'a' },
    { methods: new Map([[method.id, method]]), policies },
  );
  if (!board) throw new Error(showProblems(problems));
  return board;
}

function nominalOf(board: Board): Record<string, number> {
  const circuit = board.circuits[0]!;
  const trees = new Map([...circuit.results, ...circuit.firmware].map(({ id, tree }) => [id, tree]));
  const values = new Map<string, number>();
  for (const { id, value } of [...board.derating, ...board.conditions, ...circuit.inputs]) {
    if (value.kind === 'expression') trees.set(id, value.tree);
    else values.set(id, value.quantity.typ);
  }
  const worked = (id: string): number => {
    const known = values.get(id);
    if (known !== undefined) return known;
    const value = evaluateTree(trees.get(id)!, worked);
    values.set(id, value);
    return value;
  };
  return Object.fromEntries(
    [...circuit.inputs, ...circuit.results, ...circuit.firmware].map(({ id, symbol }) => [symbol, worked(id)]),
  );
}
