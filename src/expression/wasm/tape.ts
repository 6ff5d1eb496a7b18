import type { OperationName } from '../operations/index.ts';
import type { Tape } from '../tape.ts';
import { type Code, call, loop, type Statement, type Term } from './code.ts';
import { type Argument, ColumnFunctions } from './columns.ts';
import { constantPower } from './constant-power.ts';
import { load, store } from './memory.ts';
import { writers } from './operations.ts';
import { callAt, constantAt, type Plan, planOf } from './plan.ts';
import { integer, twice } from './vectors.ts';

/** Where columns of a block of trials stand in memory: addresses of their first double. */
export interface Places {
  /** Bytes of a column, a multiple of 64. */
  readonly bytes: number;
  input(index: number): number;
  output(index: number): number;
  /** A column for a value that a later loop reads. */
  carried(): number;
}

/** Steps in one loop. Longer ones run no faster and take the compiler longer. */
const longest = 60;

/**
 * Code that computes the given outputs of `tape` for a block of trials, two at a time: reads a column for each input
 * that they need, writes one for each output.
 */
export function tapeCode(tape: Tape, outputs: readonly number[], places: Places): Statement {
  return (code) => new TapeWriter(code, tape, outputs, places).write();
}

class TapeWriter {
  readonly #code: Code;
  readonly #tape: Tape;
  readonly #outputs: readonly number[];
  readonly #places: Places;
  readonly #plan: Plan;
  readonly #columns = new Map<number, number>();
  readonly #functions: ColumnFunctions;

  constructor(code: Code, tape: Tape, outputs: readonly number[], places: Places) {
    this.#code = code;
    this.#tape = tape;
    this.#outputs = outputs;
    this.#places = places;
    this.#plan = planOf(tape, outputs, longest);
    this.#functions = new ColumnFunctions(places.bytes);
    tape.inputs.forEach((_, i) => {
      this.#columns.set(i, places.input(i));
    });
    const outputOf = new Map(outputs.map((slot, k) => [slot, k]));
    for (const slot of this.#plan.columns) {
      const output = outputOf.get(slot);
      this.#columns.set(slot, output === undefined ? places.carried() : places.output(output));
    }
  }

  write(): void {
    for (const unit of this.#plan.units) {
      if (unit.kind === 'loop') this.#loop(unit.slots);
      else this.#function(unit.slot);
    }
    this.#copies();
  }

  /** A function of its own: one for the whole tape would be long in compiling, and has a limit to its size. */
  #loop(slots: readonly number[]): void {
    this.#code.do(
      this.#pass((at, code) => {
        const values = new Map<number, Term>();
        const value = (slot: number): Term => {
          const constant = constantAt(this.#tape, slot);
          if (constant !== undefined) return twice(constant);
          const term = values.get(slot) ?? code.let(load(at, this.#columns.get(slot)!));
          values.set(slot, term);
          return term;
        };
        for (const slot of slots) {
          const result = code.let(this.#arithmetic(code, slot, value));
          values.set(slot, result);
          if (this.#plan.columns.has(slot)) store(at, result, this.#columns.get(slot)!)(code);
        }
      }),
    );
  }

  #arithmetic(code: Code, slot: number, value: (slot: number) => Term): Term {
    const { operation, args } = callAt(this.#tape, slot)!;
    const writer = writers[operation as OperationName];
    const terms = args.map(value);
    if (typeof writer === 'function') return writer(code, terms);
    return constantPower(code, terms[0]!, constantAt(this.#tape, args[1]!)!);
  }

  #function(slot: number): void {
    const { operation, args } = callAt(this.#tape, slot)!;
    const writer = writers[operation as OperationName];
    if (typeof writer === 'function') throw new Error(`${operation} is no function of its own`);
    const given = args.map((arg): Argument => {
      const constant = constantAt(this.#tape, arg);
      return constant === undefined ? { column: this.#columns.get(arg)! } : { constant };
    });
    this.#code.do(this.#functions.apply(writer, given, this.#columns.get(slot)!));
  }

  /** Outputs that are inputs or constants, or stand twice. */
  #copies(): void {
    const copies = this.#outputs.flatMap((slot, k) =>
      this.#columns.get(slot) === this.#places.output(k) ? [] : [{ slot, to: this.#places.output(k) }],
    );
    if (copies.length === 0) return;
    this.#code.do(
      this.#pass((at, code) => {
        for (const { slot, to } of copies) {
          const constant = constantAt(this.#tape, slot);
          store(at, constant === undefined ? load(at, this.#columns.get(slot)!) : twice(constant), to)(code);
        }
      }),
    );
  }

  /** A call of a function that goes once over the trials, two at a time. */
  #pass(body: (at: Term, code: Code) => void): Statement {
    return call({
      parameters: [],
      write: (code) => code.do(loop(integer(0), integer(this.#places.bytes), 16, body)),
    });
  }
}
