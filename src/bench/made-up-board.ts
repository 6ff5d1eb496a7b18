import type { Variable } from '../analysis/variable.ts';
import { operationNamed } from '../expression/operations/index.ts';
import type { Tape } from '../expression/tape.ts';
import { TapeBuilder } from '../expression/tape-builder.ts';

/** A board made up by chance: parts, and a tape of equations over them. */
export interface MadeUpBoard {
  readonly tape: Tape;
  readonly outputs: readonly number[];
  readonly variables: readonly Variable[];
}

/** A slot with its typical value, and how often it was used. */
interface Term {
  readonly slot: number;
  readonly typical: number;
  uses: number;
}

/**
 * A board with a given number of equations, the same on every run: half of its parts normal, a quarter uniform, a
 * quarter triangular. For 150 equations 80 parts, 60 outputs and about 940 operations, of which 107 divisions, 15
 * roots, 10 exponentials, 5 logarithms and 4 powers. Every equation is scaled to a typical value from 1 to 10, so that
 * those built on others stay within reason.
 */
export function madeUpBoard(equations = 150): MadeUpBoard {
  const maker = new Maker();
  const count = (per150: number): number => Math.max(1, Math.round((per150 * equations) / 150));
  const variables = Array.from({ length: count(80) }, (_, i) => maker.part(i));
  const shapes: (() => Term)[] = [];
  const kinds = [
    [15, maker.root],
    [10, maker.decay],
    [5, maker.logarithm],
    [4, maker.power],
    [30, maker.quotient],
    [30, maker.ratios],
    [7, maker.sideBySide],
    [25, maker.sum],
    [24, maker.product],
  ] as const;
  for (const [per150, shape] of kinds) for (let i = 0; i < count(per150); i++) shapes.push(shape);
  const made = maker.shuffled(shapes.slice(0, equations)).map((shape) => maker.equation(shape));
  const outputs = made.slice(-count(60)).map(({ slot }) => slot);
  const built = maker.builder.finish(outputs);
  return { tape: built.tape, outputs: built.outputs, variables };
}

class Maker {
  readonly builder = new TapeBuilder({ simplify: false });
  readonly #terms: Term[] = [];
  #state = 20260;

  /** A number from 0 to 1. Constants: D. E. Knuth, The Art of Computer Programming 2, 3.3.4, table 1, line 16. */
  #roll(): number {
    this.#state = (Math.imul(this.#state, 1664525) + 1013904223) >>> 0;
    return this.#state / 2 ** 32;
  }

  part(i: number): Variable {
    const id = `part_${i + 1}`;
    const typ = 1 + Math.round(this.#roll() * 80) / 10;
    const reach = 0.01 + 0.09 * this.#roll();
    const kind = (['normal', 'normal', 'uniform', 'triangular'] as const)[i % 4]!;
    this.#terms.push({ slot: this.builder.input(id), typical: typ, uses: 0 });
    const [min, max] = [typ * (1 - reach), typ * (1 + reach * (kind === 'triangular' ? 1.6 : 1))];
    return { id, role: 'part', what: 'value', min, typ, max, draw: { kind }, instance: 1, input: noInput };
  }

  readonly root = (): Term => this.#of('sqrt', this.#plus(this.#product2(), this.#product2()));
  readonly decay = (): Term =>
    this.#of('exp', this.#times(this.#number(-0.3), this.#over(this.#any(), this.#plus(this.#any(), this.#any()))));
  readonly logarithm = (): Term => this.#of('ln', this.#plus(this.#number(1), this.#product2()));
  readonly power = (): Term => this.#of('power', this.#plus(this.#any(), this.#number(0.5)), this.#number(1.7));
  readonly quotient = (): Term =>
    this.#over(this.#plus(this.#product2(), this.#product2()), this.#plus(this.#any(), this.#any()));
  readonly ratios = (): Term => {
    const loaded = this.#over(this.#any(), this.#plus(this.#any(), this.#times(this.#number(0.5), this.#any())));
    return this.#plus(this.#plus(loaded, this.#over(this.#any(), this.#any())), this.#product2());
  };
  readonly sideBySide = (): Term => {
    const [a, b] = [this.#any(), this.#any()];
    return this.#plus(this.#over(this.#times(a, b), this.#plus(a, b)), this.#product2());
  };
  readonly sum = (): Term => {
    const less = this.#of('subtract', this.#any(), this.#times(this.#number(0.1), this.#any()));
    const scaled = this.#of('subtract', this.#any(), this.#times(this.#number(0.05), this.#any()));
    return this.#plus(this.#plus(this.#product2(), less), this.#times(scaled, this.#any()));
  };
  readonly product = (): Term =>
    this.#times(this.#plus(this.#any(), this.#times(this.#number(0.1), this.#any())), this.#any());

  /** An equation of that shape, scaled. */
  equation(shape: () => Term): Term {
    const raw = shape();
    const wanted = 1 + 9 * this.#roll();
    const scaled = this.#times(raw, this.#number(Number((wanted / Math.abs(raw.typical)).toPrecision(3))));
    this.#terms.push(scaled);
    return scaled;
  }

  shuffled<T>(items: readonly T[]): T[] {
    return items
      .map((item) => ({ item, at: this.#roll() }))
      .sort((a, b) => a.at - b.at)
      .map(({ item }) => item);
  }

  /** Of two parts or results the less used, so that nothing is left over. */
  #any(): Term {
    const [a, b] = [0, 1].map(() => this.#terms[Math.floor(this.#roll() * this.#terms.length)]!) as [Term, Term];
    const chosen = a.uses <= b.uses ? a : b;
    chosen.uses++;
    return chosen;
  }

  #number(typical: number): Term {
    return { slot: this.builder.constant(typical), typical, uses: 0 };
  }

  #of(operation: string, ...args: readonly Term[]): Term {
    const slots = args.map(({ slot }) => slot);
    const typical = operationNamed(operation).value(args.map((arg) => arg.typical));
    return { slot: this.builder.keep(operation, slots), typical, uses: 0 };
  }

  readonly #times = (a: Term, b: Term): Term => this.#of('multiply', a, b);
  readonly #plus = (a: Term, b: Term): Term => this.#of('add', a, b);
  readonly #over = (a: Term, b: Term): Term => this.#of('divide', a, b);
  readonly #product2 = (): Term => this.#times(this.#any(), this.#any());
}

/** Nothing that simulates boards reads where a variable comes from. */
const noInput = {} as Variable['input'];
