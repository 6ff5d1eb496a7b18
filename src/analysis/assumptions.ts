
import type { Board, Input } from '../spec/board.ts';
import type { AssumptionFinding } from './findings.ts';

/** Every value that nobody guarantees: usual values that were taken, and what the spec itself calls typical or assumed. */
export function assumptionsOf(board: Board): AssumptionFinding[] {
  return board.circuits.flatMap(({ inputs }) =>
    inputs.flatMap((input) => {
      const basis = input.usual ? 'usual value' : input.basis === 'typical' || input.basis === 'assumed' ? input.basis : undefined;
      return basis ? [{ symbol: input.id, value: valueText(input), basis } as const] : [];
    }),
  );
}

const valueText = ({ value }: Input): string => (value.kind === 'expression' ? value.text : value.quantity.text);
