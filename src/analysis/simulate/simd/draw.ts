import { type Code, call, loop, parameter, type Statement, type Term } from '../../../expression/wasm/code.ts';
import { load, store } from '../../../expression/wasm/memory.ts';
import type { FunctionSource } from '../../../expression/wasm/module.ts';
import {
  bits,
  double,
  f64x2,
  fourfold,
  i32,
  i32x4,
  integer,
  pattern,
  shuffleWords,
} from '../../../expression/wasm/vectors.ts';
import type { Law } from '../sample.ts';
import { golden, multipliers } from '../stream.ts';
import { leastTable, normal, type Step, triangular, uniform } from './inverse.ts';

type Drawn = Exclude<Law, { kind: 'held' }>;

/** Where the draws of a block find what they share. */
export interface DrawPlace {
  /** Boards in a block, a multiple of 4. */
  readonly block: number;
  /** Address of the table of the normal quantile, at least `leastTable`. */
  readonly table: number;
  /** Address of one base word for each board of the block. */
  readonly bases: number;
  /** Address of room for as many words. */
  readonly words: number;
}

/**
 * Functions that draw a block of boards: the same arithmetic as `fill`, two or four boards at a time. A column takes
 * two loops or three, the first for the words: in one loop the chain of steps for each number would be so long that the
 * processor, which looks some hundred steps ahead, would find too few that are ready, and take a third longer.
 */
export class Draws {
  readonly #place: DrawPlace;
  readonly #functions: Readonly<Record<Drawn['kind'], FunctionSource>>;

  constructor(place: DrawPlace) {
    if (place.table < leastTable) throw new Error(`the table must not stand below ${leastTable}`);
    this.#place = place;
    this.#functions = {
      uniform: this.#column(2, uniform),
      triangular: this.#column(5, triangular),
      normal: this.#column(4, (code, numbers) => normal(code, place.table, numbers)),
    };
  }

  /** Writes the base words of the boards from `first` (an i32) on. */
  bases(first: Term): Statement {
    const { block, bases } = this.#place;
    return (code) => {
      const mix = mixer(code);
      const start = code.let(i32x4.add(i32x4.splat(first), pattern(1 + golden, golden, 3 + golden, 2 + golden)));
      code.do(
        loop(integer(0), integer(4 * block), 16, (at) => {
          const trial = i32x4.add(start, i32x4.splat(i32.shrU(at, integer(2))));
          store(at, folded(mix(trial), 16), bases)(code);
        }),
      );
    };
  }

  /** Fills the column at an address with draws by a law. */
  fill(law: Drawn, column: number): Statement {
    const { first, second } = law.key;
    return call(this.#functions[law.kind], ...[column, first, second].map(integer), ...numbersOf(law).map(double));
  }

  /** A function of address, key and numbers that fills a column. */
  #column(numbers: number, inverse: (code: Code, numbers: readonly Term[]) => readonly Step[]): FunctionSource {
    const { block, bases, words } = this.#place;
    return {
      parameters: ['i32', 'i32', 'i32', ...Array.from({ length: numbers }, () => 'f64' as const)],
      write(code) {
        const [first, second] = [1, 2].map((i) => code.let(i32x4.splat(parameter(i))));
        const mix = mixer(code);
        const splats = Array.from({ length: numbers }, (_, i) => code.let(f64x2.splat(parameter(3 + i))));
        const [fromWord, ...further] = inverse(code, splats);
        code.do(
          loop(integer(0), integer(4 * block), 16, (at) => {
            store(at, mix(i32x4.add(bits.xor(load(at, bases), first!), second!)), words)(code);
          }),
          loop(integer(0), integer(4 * block), 16, (at) => {
            const four = code.let(load(at, words));
            const to = code.let(i32.add(parameter(0), i32.shl(at, integer(1))), 'i32');
            store(to, fromWord!(f64x2.fromLowI32(four)))(code);
            store(to, fromWord!(f64x2.fromLowI32(shuffleWords(four, four, [2, 3, 2, 3]))), 16)(code);
          }),
          ...further.map((step) =>
            loop(integer(0), integer(8 * block), 16, (at) => {
              const place = code.let(i32.add(parameter(0), at), 'i32');
              store(place, step(code.let(load(place))))(code);
            }),
          ),
        );
      },
    };
  }
}

/** The numbers of a law, in the order its function takes them. */
function numbersOf(law: Drawn): number[] {
  switch (law.kind) {
    case 'uniform':
      return [law.min, law.width];
    case 'triangular':
      return [law.min, law.max, law.split, law.rising, law.falling];
    case 'normal':
      return [law.typ, law.left, law.right, law.kept * 2 ** -32];
    default:
      return law satisfies never;
  }
}

/** `almostMixed` of four words. Constants are put into registers once, ahead of the loop. */
function mixer(code: Code): (words: Term) => Term {
  const [first, second] = multipliers.map((multiplier) => code.let(fourfold(multiplier)));
  return (words) => {
    const a = code.let(words);
    const b = code.let(i32x4.mul(folded(a, 16), first!));
    return code.let(i32x4.mul(folded(b, 15), second!));
  };
}

const folded = (h: Term, by: number): Term => bits.xor(h, i32x4.shrU(h, integer(by)));
