import type { Tree } from '../expression/tree.ts';
import { parseUnit } from '../quantity/units.ts';
import type { Result } from './board.ts';
import type { DraftCircuit } from './read-circuit.ts';

const nowhere = { start: 0, end: 0 };

/** Sums over the board of what methods mark as heat, stored energy or supply load: `board.heat`, `board.load.<rail>`. */
export function totalsOf(drafts: readonly DraftCircuit[]): Result[] {
  const marked = drafts.flatMap((draft) => draft.results.map((result) => ({ result, count: draft.count })));
  const rails = [...new Set(marked.flatMap(({ result }) => result.load ?? []))].sort();
  return [
    total(
      'heat',
      'W',
      'Heat of the whole board',
      marked.filter(({ result }) => result.heat),
    ),
    total(
      'stored_energy',
      'J',
      'Energy stored on the board',
      marked.filter(({ result }) => result.stored),
    ),
    ...rails.map((rail) =>
      total(
        `load.${rail}`,
        'A',
        `Current drawn from ${rail}`,
        marked.filter(({ result }) => result.load === rail),
      ),
    ),
  ].filter((result) => result !== undefined);
}

function total(
  name: string,
  unit: string,
  says: string,
  terms: readonly { result: Result; count: number }[],
): Result | undefined {
  if (!terms.length) return undefined;
  const args = terms.map(({ result, count }): Tree => {
    const symbol: Tree = { kind: 'symbol', name: result.id, at: nowhere };
    return count === 1
      ? symbol
      : {
          kind: 'call',
          operation: 'multiply',
          args: [{ kind: 'number', value: count, text: String(count), at: nowhere }, symbol],
          at: nowhere,
        };
  });
  const tree: Tree = args.length === 1 ? args[0]! : { kind: 'call', operation: 'sum', args, at: nowhere };
  return { id: `board.${name}`, symbol: name, says, unit: parseUnit(unit), tree, text: '', heat: false, stored: false };
}
