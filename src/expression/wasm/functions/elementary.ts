import { type Code, call, parameter, type Term } from '../code.ts';
import type { FunctionSource } from '../module.ts';

/** A function of one or two numbers, as code for pairs of doubles. */
export interface Elementary {
  readonly arity: 1 | 2;
  write(code: Code, args: readonly Term[]): Term;
  /** The function of one pair, to be called. */
  readonly source: FunctionSource;
}

export function elementary(arity: 1 | 2, write: (code: Code, ...args: Term[]) => Term): Elementary {
  const source: FunctionSource = {
    parameters: Array.from({ length: arity }, () => 'v128' as const),
    result: 'v128',
    write: (code) => write(code, ...Array.from({ length: arity }, (_, i) => parameter(i)))(code),
  };
  return { arity, write: (code, args) => write(code, ...args), source };
}

/** The function as a call. */
export const calling =
  ({ source }: Elementary) =>
  (...args: readonly Term[]): Term =>
    call(source, ...args);
