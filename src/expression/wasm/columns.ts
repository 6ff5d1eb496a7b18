import { type Code, call, loop, parameter, type Statement, type Term } from './code.ts';
import type { Elementary } from './functions/elementary.ts';
import { load, store } from './memory.ts';
import type { FunctionSource } from './module.ts';
import { double, f64x2, i32, integer } from './vectors.ts';

/** What a function is given: the column at an address, or the same number on every trial. */
export type Argument = { readonly column: number } | { readonly constant: number };

/** Pairs of trials at a time: enough that one pair's long chain of steps does not hold the others up. */
const pairs = 4;

/**
 * Elementary functions over whole columns, each a loop of its own.
 * One pair's logarithm or power is a chain of some hundred steps, of which each waits for the one before: two pairs
 * step by step take little longer than one.
 */
export class ColumnFunctions {
  readonly #bytes: number;
  readonly #sources = new Map<Elementary, Map<string, FunctionSource>>();

  /** @param bytes  of a column, a multiple of 64 */
  constructor(bytes: number) {
    this.#bytes = bytes;
  }

  /** Fills the column at `result` with the function of the arguments. */
  apply(elementary: Elementary, args: readonly Argument[], result: number): Statement {
    const given = args.map((arg) => ('column' in arg ? integer(arg.column) : double(arg.constant)));
    return call(this.#source(elementary, args), ...given, integer(result));
  }

  #source(elementary: Elementary, args: readonly Argument[]): FunctionSource {
    const known = this.#sources.get(elementary) ?? new Map<string, FunctionSource>();
    this.#sources.set(elementary, known);
    const kinds = args.map((arg) => 'column' in arg);
    const source = known.get(kinds.join()) ?? columnFunction(elementary, kinds, this.#bytes);
    known.set(kinds.join(), source);
    return source;
  }
}

/** @param kinds  true for each argument that is a column */
function columnFunction(elementary: Elementary, kinds: readonly boolean[], bytes: number): FunctionSource {
  return {
    parameters: [...kinds.map((column) => (column ? ('i32' as const) : ('f64' as const))), 'i32'],
    passes: pairs,
    write(code: Code) {
      const constants = kinds.map((column, i) => (column ? undefined : code.let(f64x2.splat(parameter(i)))));
      code.do(
        loop(integer(0), integer(bytes), 16 * pairs, (at) => {
          const args = constants.map((constant, i): Term => constant ?? code.let(load(i32.add(parameter(i), at))));
          store(i32.add(parameter(kinds.length), at), elementary.write(code, args))(code);
        }),
      );
    },
  };
}
