import type { Variable } from '../analysis/variable.ts';
import { operationNamed } from '../expression/operations/index.ts';
import type { Tape } from '../expression/tape.ts';
import { TapeBuilder } from '../expression/tape-builder.ts';

/** A board made up by chance: parts, and a tape of equations over them. */
export interface MadeUp {
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

/** Per 150 equations: 80 parts, 60 outputs, and among the equations these. */
const per150 = { parts: 80, outputs: 60, sqrt: 15, exp: 10, ln: 5, power: 4 };

/**
 * A board with a given number of equations, the same on every run: half of its parts normal, a quarter uniform, a quarter
 * triangular; of 150 equations 107 divisions, 15 roots, 10 exponentials, 5 logarithms and 4 powers among 940 operations.
 * Every equation is scaled to a typical value from 1 to 10, so that those built on others stay within reason.
 */
export function madeUpBoard(equations = 150): MadeUp {
  const maker = new Maker();
  const share = equations / 150;
  const count = (n: number) => Math.max(1, Math.round(n * share));
  const variables = Array.from({ length: count(per150.parts) }, (_, i) => maker.part(i));
  const shapes = [
    ...Array.from({ length: count(per150.sqrt) }, () => maker.root),
    ...Array.from({ length: count(per150.exp) }, () => maker.decay),
    ...Array.from({ length: count(per150.ln) }, () => maker.logarithm),
    ...Array.from({ length: count(per150.power) }, () => maker.power),
  ];
  const plain = [maker.quotient, maker.sum, maker.ratio, maker.product, maker.parallel];
  while (shapes.length < equations) shapes.push(plain[shapes.length % plain.length]!);
  const made = maker.shuffled(shapes).map((shape) => maker.equation(shape));
  const outputs = made.slice(-count(per150.outputs)).map(({ slot }) => slot);
  const { tape, outputs: placed } = maker.builder.finish(outputs);
  return { tape, outputs: placed, variables };
}

class Maker {
  readonly builder = new TapeBuilder({ simplify: false });
  readonly #terms: Term[] = [];
  #state = 20260;

  /** A number from 0 to 1. */
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
    return { id, role: 'part', what: 'value', min, typ, max, draw: { kind }, instance: 1, input: madeUpInput };
  }

  /** Of two drawn the less used, so that nothing is left over. */
  readonly #pick = (): Term => {
    const [a, b] = [0, 1].map(() => this.#terms[Math.floor(this.#roll() * this.#terms.length)]!);
    const chosen = a!.uses <= b!.uses ? a! : b!;
    chosen.uses++;
    return chosen;
  };
  readonly #number = (typical: number): Term => ({ slot: this.builder.constant(typical), typical, uses: 0 });
  readonly #of = (operation: string, ...args: readonly Term[]): Term => ({
    slot: this.builder.keep(
      operation,
      args.map(({ slot }) => slot),
    ),
    typical: operationNamed(operation).value(args.map(({ typical }) => typical)),
    uses: 0,
  });
  readonly #times = (a: Term, b: Term): Term => this.#of('multiply', a, b);
  readonly #plus = (a: Term, b: Term): Term => this.#of('add', a, b);

  readonly root = (): Term =>
    this.#of('sqrt', this.#plus(this.#times(this.#pick(), this.#pick()), this.#times(this.#pick(), this.#pick())));
  readonly decay = (): Term =>
    this.#of(
      'exp',
      this.#times(this.#number(-0.3), this.#of('divide', this.#pick(), this.#plus(this.#pick(), this.#pick()))),
    );
  readonly logarithm = (): Term => this.#of('ln', this.#plus(this.#number(1), this.#times(this.#pick(), this.#pick())));
  readonly power = (): Term => this.#of('power', this.#plus(this.#pick(), this.#number(0.5)), this.#number(1.7));
  readonly quotient = (): Term =>
    this.#of(
      'divide',
      this.#plus(this.#times(this.#pick(), this.#pick()), this.#pick()),
      this.#plus(this.#pick(), this.#pick()),
    );
  readonly sum = (): Term =>
    this.#plus(
      this.#times(this.#pick(), this.#pick()),
      this.#of('subtract', this.#times(this.#pick(), this.#pick()), this.#times(this.#number(0.3), this.#pick())),
    );
  readonly ratio = (): Term =>
    this.#plus(
      this.#of('divide', this.#pick(), this.#plus(this.#pick(), this.#times(this.#number(0.5), this.#pick()))),
      this.#of('divide', this.#pick(), this.#pick()),
    );
  readonly product = (): Term =>
    this.#times(
      this.#plus(this.#pick(), this.#times(this.#number(0.1), this.#pick())),
      this.#plus(this.#pick(), this.#times(this.#number(0.7), this.#pick())),
    );
  readonly parallel = (): Term => {
    const [a, b] = [this.#pick(), this.#pick()];
    return this.#plus(this.#of('divide', this.#times(a, b), this.#plus(a, b)), this.#times(this.#pick(), this.#pick()));
  };

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
}

const madeUpInput = {} as Variable['input'];
