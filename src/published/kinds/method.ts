import type { Handbook } from '../../spec/method-schema.ts';
import { workMethod } from '../../spec/work-method.ts';
import type { Figures } from '../judge.ts';

/** Nominal figures of a method; symbols that are not given stand as in its worked example. */
export function methodFigures(id: string, given: Readonly<Record<string, string>>, book: Handbook): Figures {
  const method = book.methods.get(id);
  if (!method) throw new Error(`The handbook has no method ${id}`);
  const unknown = Object.keys(given).filter((symbol) => !Object.hasOwn(method.symbols, symbol));
  if (unknown.length) throw new Error(`${id} has no symbol ${unknown.join(', ')}`);
  const values = workMethod(method, { ...method.example.given, ...given }, strictest(book));
  return (symbol) => {
    const value = values[symbol];
    if (value === undefined) throw new Error(`${id} has no result ${symbol}`);
    return value;
  };
}

/** Results that ask for derating take it from the strictest policy. */
const strictest = ({ policies }: Handbook): Handbook['policies'] =>
  new Map([...policies].filter(([id]) => id === 'ecss'));
