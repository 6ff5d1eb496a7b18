import { valuesAt } from '../../analysis/values-at.ts';
import type { Board, Circuit, Input } from '../../spec/board.ts';
import type { Handbook, Method } from '../../spec/method-schema.ts';
import { methodBoard } from '../../spec/work-method.ts';
import { inputsOf } from '../by-id.ts';
import type { Text } from '../text.ts';
import { type Trail, trailOf } from '../trail.ts';

/** A method's worked example, run as a board of one circuit: the same way that every circuit of a packet goes. */
export interface Worked {
  readonly method: Method;
  readonly circuit: Circuit;
  /** What the circuit and the policy are given, by id. */
  readonly inputs: ReadonlyMap<string, Input>;
  /** Typical value of everything by id, SI base units. */
  readonly values: ReadonlyMap<string, number>;
  readonly trail: Trail;
}

/** The example with the strictest derating policy there is, which is named where it counts. */
export const examplePolicy = 'ecss';

export function workedExample(method: Method, { policies }: Handbook): Worked {
  const strictest = new Map([...policies].filter(([id]) => id === examplePolicy));
  const board: Board = methodBoard(method, method.example.given, strictest);
  return {
    method,
    circuit: board.circuits[0]!,
    inputs: inputsOf(board),
    values: valuesAt(board, {}),
    // Sums over a board mean nothing on a board of one circuit.
    trail: trailOf({ ...board, totals: [] }, ''),
  };
}

/** Ids of the example's one circuit, as anchors and names of the page: `it.V_out` → `V_out`, `check-it.heat` → `check-heat`. */
export const local = (id: string): string => id.replace(/^(check-)?it\./, '$1');

/** Text of the packet's parts with the example's circuit left out of names and links. */
export const localText = (text: Text): Text =>
  text.map((part) =>
    typeof part !== 'string' && part.kind === 'link' ? { ...part, text: local(part.text), to: local(part.to) } : part,
  );
