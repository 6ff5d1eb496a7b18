import { loadHandbook } from '../../src/site/handbook-files.ts';
import type { Method } from '../../src/spec/method-schema.ts';
import { workMethod } from '../../src/spec/work-method.ts';

const { methods, policies } = loadHandbook();
/** Results that ask for derating take it from the strictest policy. */
const strictest = new Map([...policies].filter(([id]) => id === 'ecss'));

export function methodNamed(id: string): Method {
  const method = methods.get(id);
  if (!method) throw new Error(`The handbook has no method ${id}`);
  return method;
}

/**
 * Works a method of the handbook through, nominally. Symbols that are not given stand as in its worked example, which are
 * those that the results asked for do not depend on.
 * @returns nominal value of a result by its symbol, in SI base units
 * @example work('step-down', { V_in: '30 V', L: '6.8 uH' })('dI') // 1.2254901…
 */
export function work(id: string, given: Record<string, string>): (symbol: string) => number {
  const method = methodNamed(id);
  const unknown = Object.keys(given).filter((symbol) => !Object.hasOwn(method.symbols, symbol));
  if (unknown.length) throw new Error(`${id} has no symbol ${unknown.join(', ')}`);
  const values = workMethod(method, { ...method.example.given, ...given }, strictest);
  return (symbol) => {
    const value = values[symbol];
    if (value === undefined) throw new Error(`${id} has no result ${symbol}`);
    return value;
  };
}
