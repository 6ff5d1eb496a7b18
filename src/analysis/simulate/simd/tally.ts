import {
  type Code,
  callImported,
  loop,
  parameter,
  type Statement,
  type Term,
  type Variable,
  when,
} from '../../../expression/wasm/code.ts';
import { load, loadByte, loadTwice, loadWord, store, storeLane, storeWord } from '../../../expression/wasm/memory.ts';
import type { FunctionSource, ImportedFunction } from '../../../expression/wasm/module.ts';
import { bits, f64x2, i32, i64x2, integer, pattern, twice, wordOf } from '../../../expression/wasm/vectors.ts';
import { bins } from '../grid.ts';
import { tallyLayout } from './tally-layout.ts';

const at = tallyLayout;

/** Told the address of a tally whose store of kept values is full; empties the store and puts `next` back. */
export const emptied: ImportedFunction = { name: 'emptied', parameters: ['i32'] };

/** Counts a column of one output: (address of the column, its bytes, address of the tally) → boards that fail. */
export const tally: FunctionSource = {
  parameters: ['i32', 'i32', 'i32'],
  result: 'i32',
  write(code) {
    const [column, bytes, state] = [0, 1, 2].map(parameter) as [Term, Term, Term];
    const next = code.variable(loadWord(state, at.next), 'i32');
    code.do(
      when(i32.gtU(i32.add(next.get, bytes), loadWord(state, at.end)), () => {
        callImported(emptied.name)(state)(code);
        next.set(loadWord(state, at.next))(code);
      }),
    );
    const counter = new Counter(code, state, next);
    const pairs = code.let(i32.and(bytes, integer(-16)), 'i32');
    code.do(
      when(pairs, () => loop(integer(0), pairs, 16, (i) => counter.pair(load(i32.add(column, i))))(code)),
      when(i32.and(bytes, integer(8)), () => counter.single(loadTwice(i32.add(column, pairs)))),
    );
    counter.finish(i32.shrU(bytes, integer(3)))(code);
  },
};

/** Writes the code that counts values, with what is counted in local variables. */
class Counter {
  readonly #code: Code;
  readonly #state: Term;
  readonly #next: Variable;
  readonly #grid: readonly [shift: Term, scale: Term, offset: Term];
  readonly #sum: Variable;
  readonly #squares: Variable;
  readonly #min: Variable;
  readonly #max: Variable;
  readonly #passed: Variable;
  readonly #numbers: readonly [zero: Term, lastBin: Term, rounder: Term];

  constructor(code: Code, state: Term, next: Variable) {
    const read = (offset: number): Term => code.let(load(state, offset));
    this.#code = code;
    this.#state = state;
    this.#next = next;
    this.#grid = [read(at.shift), read(at.scale), read(at.offset)];
    this.#sum = code.variable(load(state, at.sum));
    this.#squares = code.variable(load(state, at.squares));
    this.#min = code.variable(load(state, at.min));
    this.#max = code.variable(load(state, at.max));
    this.#passed = code.variable(pattern(0));
    this.#numbers = [code.let(twice(0)), code.let(twice(bins - 1)), code.let(twice(2 ** 52))];
  }

  pair(value: Term): void {
    this.#count(value, [0, 1]);
  }

  /** The last board of an odd number. */
  single(value: Term): void {
    this.#count(value, [0], pattern(0, 0, -1, -1));
  }

  #count(value: Term, lanes: readonly (0 | 1)[], masked?: Term): void {
    const only = (term: Term): Term => (masked ? bits.andnot(term, masked) : term);
    const code = this.#code;
    const [shift, scale, offset] = this.#grid;
    const [zero, lastBin, rounder] = this.#numbers;
    const x = code.let(value);
    const d = code.let(f64x2.sub(x, shift));
    const counted = masked ? code.let(only(d)) : d;
    // Values that are no numbers leave the extremes as they are, fail, and make the sums no numbers.
    code.do(
      this.#sum.set(f64x2.add(this.#sum.get, counted)),
      this.#squares.set(f64x2.add(this.#squares.get, f64x2.mul(counted, counted))),
      this.#min.set(f64x2.pmin(this.#min.get, x)),
      this.#max.set(f64x2.pmax(this.#max.get, x)),
      this.#passed.set(i64x2.sub(this.#passed.get, only(f64x2.ge(x, zero)))),
    );
    const place = f64x2.add(f64x2.mul(d, scale), offset);
    const held = f64x2.pmin(lastBin, f64x2.pmax(zero, place));
    const bin = code.let(f64x2.add(held, rounder));
    for (const lane of lanes) this.#bin(x, bin, lane);
  }

  /** Every value is written to the store; only in a bin with a flag does the next one not overwrite it. */
  #bin(x: Term, place: Term, lane: 0 | 1): void {
    const code = this.#code;
    const bin = code.let(wordOf(place, 2 * lane), 'i32');
    const counter = code.let(i32.add(this.#state, i32.shl(bin, integer(2))), 'i32');
    code.do(
      storeWord(counter, i32.add(loadWord(counter, at.counts), integer(1)), at.counts),
      storeLane(this.#next.get, x, lane),
      this.#next.set(i32.add(this.#next.get, loadByte(i32.add(this.#state, bin), at.flags))),
    );
  }

  /** Writes back what was counted; leaves the boards that failed, of `boards`, on the stack. */
  finish(boards: Term): Statement {
    return (code) => {
      const [state, passed] = [this.#state, this.#passed.get];
      const failed = code.let(i32.sub(boards, i32.add(wordOf(passed, 0), wordOf(passed, 2))), 'i32');
      code.do(
        store(state, this.#sum.get, at.sum),
        store(state, this.#squares.get, at.squares),
        store(state, this.#min.get, at.min),
        store(state, this.#max.get, at.max),
        storeWord(state, this.#next.get, at.next),
        storeWord(state, i32.add(loadWord(state, at.failures), failed), at.failures),
      );
      failed(code);
    };
  }
}
