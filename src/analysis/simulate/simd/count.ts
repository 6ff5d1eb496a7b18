import { type Code, call, loop, parameter, type Statement, type Term, when } from '../../../expression/wasm/code.ts';
import { load, loadByte, store } from '../../../expression/wasm/memory.ts';
import type { FunctionSource } from '../../../expression/wasm/module.ts';
import { bits, f64x2, i32, integer, twice } from '../../../expression/wasm/vectors.ts';
import { tally } from './tally.ts';
import { tallyLayout } from './tally-layout.ts';

export interface CountPlace {
  readonly outputs: number;
  /** The first output's column and tally; the next ones follow at `stride` and the size of a tally. */
  readonly columns: number;
  readonly stride: number;
  readonly tallies: number;
  /** Address of one byte for each output: whether it decides on the board. */
  readonly deciding: number;
  /** For each board of the block eight bytes, set where an output that decides fails. */
  readonly failed: number;
}

/** Counts the first boards of the block, for every output: boards → whether an output that decides failed on any. */
export function countFunction(place: CountPlace): FunctionSource {
  return {
    parameters: ['i32'],
    result: 'i32',
    write(code) {
      const bytes = code.let(i32.shl(parameter(0), integer(3)), 'i32');
      const any = code.variable(integer(0), 'i32');
      code.do(
        loop(integer(0), integer(place.outputs), 1, (k) => {
          const column = code.let(i32.add(integer(place.columns), i32.mul(k, integer(place.stride))), 'i32');
          const state = i32.add(integer(place.tallies), i32.mul(k, integer(tallyLayout.size)));
          const failures = code.let(call(tally, column, bytes, state), 'i32');
          const decides = i32.gtU(i32.mul(failures, loadByte(k, place.deciding)), integer(0));
          when(decides, () => code.do(any.set(integer(1)), mark(code, column, place.failed, bytes)))(code);
        }),
      );
      any.get(code);
    },
  };
}

function mark(code: Code, column: Term, failed: number, bytes: Term): Statement {
  return loop(integer(0), bytes, 16, (i) => {
    const fails = bits.not(f64x2.ge(load(i32.add(column, i)), twice(0)));
    store(i, bits.or(load(i, failed), fails), failed)(code);
  });
}
