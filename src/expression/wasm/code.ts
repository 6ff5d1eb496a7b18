import { Bytes } from './bytes.ts';
import type { FunctionSource, ModuleBuilder } from './module.ts';

/** Types of values, by their byte in a module. */
export const types = { i32: 0x7f, i64: 0x7e, f64: 0x7c, v128: 0x7b } as const;
export type Type = keyof typeof types;

/** Writes code that leaves one value on the stack. Terms hold terms, so that code reads as the formula that it is. */
export type Term = (code: Code) => void;
/** Writes code that leaves nothing on the stack. */
export type Statement = (code: Code) => void;

/**
 * The body of one function while it is written. With several `passes` each vector stands for as many pairs of doubles:
 * every step is written once for each, one after the other, so that the processor need not wait for one pair's chain of
 * steps.
 */
export class Code {
  readonly bytes = new Bytes();
  readonly module: ModuleBuilder;
  readonly passes: number;
  /** The pair that is being written for. */
  pass = 0;
  readonly #parameters: number;
  readonly #locals: Type[] = [];

  constructor(module: ModuleBuilder, parameters: number, passes = 1) {
    this.module = module;
    this.#parameters = parameters;
    this.passes = passes;
  }

  /** Computes a term here and now, once; what comes back reads it. */
  let(term: Term, type: Type = 'v128'): Term {
    return this.variable(term, type).get;
  }

  /** A value that may be set again. */
  variable(term: Term, type: Type = 'v128'): Variable {
    const first = this.#parameters + this.#locals.length;
    const count = type === 'v128' ? this.passes : 1;
    for (let i = 0; i < count; i++) this.#locals.push(type);
    const variable = variableAt(first, count);
    variable.set(term)(this);
    return variable;
  }

  do(...statements: readonly Statement[]): void {
    for (const statement of statements) statement(this);
  }

  /** Writes something for every pair. */
  each(write: () => void, count = this.passes): void {
    for (this.pass = 0; this.pass < count; this.pass++) write();
    this.pass = 0;
  }

  /** Locals and code, as the code section holds them. */
  finish(): Uint8Array {
    const runs: { type: Type; count: number }[] = [];
    for (const type of this.#locals) {
      const last = runs.at(-1);
      if (last?.type === type) last.count++;
      else runs.push({ type, count: 1 });
    }
    const out = new Bytes().unsigned(runs.length);
    for (const { type, count } of runs) out.unsigned(count).byte(types[type]);
    return out.append(this.bytes.written).byte(0x0b).written;
  }
}

export interface Variable {
  readonly get: Term;
  set(term: Term): Statement;
}

function variableAt(index: number, count: number): Variable {
  return {
    get: ({ bytes, pass }) => void bytes.byte(0x20).unsigned(index + Math.min(pass, count - 1)),
    set: (term) => (code) =>
      code.each(() => {
        term(code);
        code.bytes.byte(0x21).unsigned(index + code.pass);
      }, count),
  };
}

/** The function's own parameter. */
export const parameter = (index: number): Term => variableAt(index, 1).get;

/** Calls another function of the module. */
export const call =
  (source: FunctionSource, ...args: readonly Term[]): Term =>
  (code) => {
    for (const arg of args) arg(code);
    code.bytes.byte(0x10).unsigned(code.module.use(source));
  };

/** Calls a function that is handed in. */
export const callImported =
  (name: string) =>
  (...args: readonly Term[]): Term =>
  (code) => {
    for (const arg of args) arg(code);
    code.bytes.byte(0x10).unsigned(code.module.imported(name));
  };

/** Does `body` with a counter that goes from `start` up to `end` in steps; at least once. */
export const loop =
  (start: Term, end: Term, step: number, body: (counter: Term, code: Code) => void): Statement =>
  (code) => {
    const counter = code.variable(start, 'i32');
    code.bytes.byte(0x03).byte(0x40);
    body(counter.get, code);
    const { bytes } = code;
    counter.get(code);
    bytes.byte(0x41).signed(step).byte(0x6a);
    counter.set(() => undefined)(code);
    counter.get(code);
    end(code);
    // br_if while below the end
    bytes.byte(0x49).byte(0x0d).unsigned(0).byte(0x0b);
  };

/** Does `body` where the condition (an i32) is not zero. */
export const when =
  (condition: Term, body: () => void): Statement =>
  (code) => {
    condition(code);
    code.bytes.byte(0x04).byte(0x40);
    body();
    code.bytes.byte(0x0b);
  };
