import type { Board, Circuit } from '../spec/board.ts';
import { mentioned } from '../spec/names.ts';
import { parted } from './symbols.ts';

/** A quantity of one circuit that another one's equations, inputs or checks use. */
export interface Reference {
  readonly from: string;
  readonly to: string;
  /** `pack.V_bat` */
  readonly quantity: string;
}

/** Every reference between two circuits, each once, in the order of the board. */
export function referencesOf({ circuits }: Board): Reference[] {
  const known = new Set(circuits.map(({ id }) => id));
  return circuits.flatMap((circuit) =>
    [...usedBy(circuit)].flatMap((quantity): Reference[] => {
      const from = parted(quantity).circuit;
      return from !== undefined && from !== circuit.id && known.has(from) ? [{ from, to: circuit.id, quantity }] : [];
    }),
  );
}

function usedBy({ inputs, results, checks, validity, firmware }: Circuit): Set<string> {
  const used = new Set<string>();
  for (const { value } of inputs) if (value.kind === 'expression') mentioned(value.tree, used);
  for (const { tree } of [...results, ...firmware]) mentioned(tree, used);
  for (const { left, right } of [...checks, ...validity]) for (const side of [left, right]) mentioned(side, used);
  return used;
}
