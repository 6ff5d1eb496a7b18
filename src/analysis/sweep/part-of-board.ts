import type { Tree } from '../../expression/tree.ts';
import type { Board, Circuit, Input } from '../../spec/board.ts';
import { mentioned } from '../../spec/names.ts';

/**
 * What the results and checks of one circuit need, and nothing else of the board: worst cases come out the same, and the
 * whole need not be put together again. How parts are correlated is left out, for it has no say in a worst case.
 */
export function partOfBoard(board: Board, id: string): Board {
  const circuit = board.circuits.find((one) => one.id === id)!;
  const own = circuit.checks.flatMap(({ left, right }) => [...mentioned(left), ...mentioned(right)]);
  const needed = neededFor(board, [...circuit.results.map((result) => result.id), ...own]);
  const kept = (one: { readonly id: string }): boolean => needed.has(one.id);
  return {
    ...board,
    totals: board.totals.filter(kept),
    circuits: board.circuits.flatMap(({ correlations, ...one }): Circuit[] => {
      const [inputs, results] = [one.inputs.filter(kept), one.results.filter(kept)];
      if (!inputs.length && !results.length) return [];
      return [{ ...one, inputs, results, checks: one.id === id ? one.checks : [], validity: [], firmware: [] }];
    }),
  };
}

function neededFor(board: Board, ids: readonly string[]): Set<string> {
  const needs = new Map<string, readonly string[]>();
  const add = (id: string, trees: readonly Tree[], more: readonly string[] = []) =>
    needs.set(id, [...trees.flatMap((tree) => [...mentioned(tree)]), ...more]);
  for (const { id, tree } of board.totals) add(id, [tree]);
  for (const circuit of board.circuits) {
    for (const { id, tree } of circuit.results) add(id, [tree]);
    for (const input of circuit.inputs) add(input.id, treesBehind(circuit, input), tracked(input));
  }
  const found = new Set<string>();
  const open = [...ids];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    open.push(...(needs.get(id) ?? []));
  }
  return found;
}

function treesBehind({ temperature }: Circuit, { value }: Input): Tree[] {
  if (value.kind === 'expression') return [value.tree];
  return value.kind === 'part' && temperature ? [temperature] : [];
}

const tracked = ({ value }: Input): string[] => (value.kind === 'part' && value.tracks ? [value.tracks.of] : []);
