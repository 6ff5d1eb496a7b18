import { parseQuantity } from '../../quantity/parse-quantity.ts';
import type { Handbook } from '../../spec/method-schema.ts';
import type { Figures } from '../judge.ts';

/** What a policy allows of the ratings given; `junction` is what it allows of a maker's junction limit. */
export function policyFigures(id: string, given: Readonly<Record<string, string>>, { policies }: Handbook): Figures {
  const policy = policies.get(id);
  if (!policy) throw new Error(`There is no policy ${id}`);
  const factor = (name: string): number => {
    const found = policy.factors[name];
    if (!found) throw new Error(`The policy ${id} has no factor ${name}`);
    return parseQuantity(found.is).typ;
  };
  return (name) => {
    const text = given[name];
    if (text === undefined) throw new Error(`${id}: no rating is given for ${name}`);
    const rating = parseQuantity(text).typ;
    return name === 'junction' ? junction(rating, factor) : factor(name) * rating;
  };
}

const zeroCelsius = 273.15;

function junction(rated: number, factor: (name: string) => number): number {
  const ratio = zeroCelsius + factor('junction_ratio') * (rated - zeroCelsius);
  return Math.min(factor('junction_limit'), rated - factor('junction_below_max'), ratio);
}
