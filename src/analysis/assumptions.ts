import type { Board, Input } from '../spec/board.ts';
import { mentioned } from '../spec/names.ts';
import type { AssumptionFinding } from './findings.ts';

/** Every value that nobody guarantees: usual values that were taken, and what the spec itself calls typical or assumed. */
export function assumptionsOf(board: Board): AssumptionFinding[] {
  const used = usedNames(board);
  const factors = board.derating.filter(({ id, usual }) => usual && used.has(id));
  return [...factors, ...board.circuits.flatMap(({ inputs }) => inputs)].flatMap((input) => {
    const basis = input.usual
      ? 'usual value'
      : input.basis === 'typical' || input.basis === 'assumed'
        ? input.basis
        : undefined;
    return basis ? [{ symbol: input.id, value: valueText(input), basis }] : [];
  });
}

/** Every id that some equation or check mentions. */
function usedNames({ circuits }: Board): Set<string> {
  const used = new Set<string>();
  for (const { inputs, results, checks, validity } of circuits) {
    for (const { tree } of results) mentioned(tree, used);
    for (const { value } of inputs) if (value.kind === 'expression') mentioned(value.tree, used);
    for (const { left, right } of [...checks, ...validity]) for (const side of [left, right]) mentioned(side, used);
  }
  return used;
}

const valueText = ({ value }: Input): string => (value.kind === 'expression' ? value.text : value.quantity.text);
