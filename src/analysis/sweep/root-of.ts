import type { Board, Input } from '../../spec/board.ts';

/** Id behind an input that only hands another value on: `stage.I_rms` → `I_ph`. Its own id where it hands on none. */
export function rootOf(inputs: ReadonlyMap<string, Input>, id: string): string {
  const value = inputs.get(id)?.value;
  return value?.kind === 'expression' && value.tree.kind === 'symbol' ? rootOf(inputs, value.tree.name) : id;
}

/** Everything that goes into a board, by id. */
export const inputsById = ({ conditions, derating, circuits }: Board): ReadonlyMap<string, Input> =>
  new Map([...conditions, ...derating, ...circuits.flatMap(({ inputs }) => inputs)].map((input) => [input.id, input]));
