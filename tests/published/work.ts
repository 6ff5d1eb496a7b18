import { methodFigures } from '../../src/published/kinds/method.ts';
import type { Method } from '../../src/spec/method-schema.ts';
import { handbook } from '../handbook.ts';

export function methodNamed(id: string): Method {
  const method = handbook.methods.get(id);
  if (!method) throw new Error(`The handbook has no method ${id}`);
  return method;
}

/**
 * Works a method of the handbook through, nominally. Symbols that are not given stand as in its worked example, which are
 * those that the results asked for do not depend on.
 * @returns nominal value of a result by its symbol, in SI base units
 * @example work('step-down', { V_in: '30 V', L: '6.8 uH' })('dI') // 1.2254901…
 */
export const work = (id: string, given: Record<string, string>): ((symbol: string) => number) =>
  methodFigures(id, given, handbook);
