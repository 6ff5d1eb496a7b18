import type { Tree } from '../expression/tree.ts';
import type { Board, Circuit } from '../spec/board.ts';
import { mentioned } from '../spec/names.ts';

/**
 * The board without what a result does not need: for it alone everything comes out the same, in a fraction of the time.
 * Nothing is checked on it.
 */
export function neededBoard(board: Board, result: string): Board {
  const needed = closureOf(board, result);
  const wanted = ({ id }: { readonly id: string }): boolean => needed.has(id);
  return {
    ...board,
    conditions: board.conditions.filter(wanted),
    derating: board.derating.filter(wanted),
    circuits: board.circuits.flatMap((circuit): Circuit[] => {
      const inputs = circuit.inputs.filter(wanted);
      const results = circuit.results.filter(wanted);
      const firmware = circuit.firmware.filter(wanted);
      if (inputs.length + results.length + firmware.length === 0) return [];
      return [{ ...circuit, inputs, results, firmware, checks: [], validity: [] }];
    }),
    totals: board.totals.filter(wanted),
  };
}

/** Ids that a result is calculated from, itself among them. */
function closureOf(board: Board, result: string): Set<string> {
  const needs = new Map<string, () => readonly string[]>();
  const tell = (id: string, trees: readonly (Tree | undefined)[], more: readonly string[] = []) =>
    needs.set(id, () => [...more, ...trees.flatMap((tree) => (tree ? [...mentioned(tree)] : []))]);
  for (const { id, value } of [...board.conditions, ...board.derating])
    tell(id, [value.kind === 'expression' ? value.tree : undefined]);
  for (const { inputs, results, firmware, temperature, correlations } of board.circuits) {
    for (const { id, value } of inputs) {
      const together = correlations?.of.includes(id) ? correlations.of : [];
      const tracked = value.kind === 'part' && value.tracks ? [value.tracks.of] : [];
      const tree = value.kind === 'expression' ? value.tree : undefined;
      tell(id, [tree, value.kind === 'part' ? temperature : undefined], [...together, ...tracked]);
    }
    for (const { id, tree } of [...results, ...firmware]) tell(id, [tree]);
  }
  for (const { id, tree } of board.totals) tell(id, [tree]);
  const found = new Set<string>();
  const open = [result];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    open.push(...(needs.get(id)?.() ?? []));
  }
  return found;
}
