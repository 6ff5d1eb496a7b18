import type { Operation } from '../operation.ts';
import { range } from '../ranges.ts';
import { libraryDown, libraryUp } from '../rounding.ts';
import { called } from '../tex.ts';
import { pureAt } from './demands.ts';

/** Exponents that are longer or taller than this in TeX are written `exp(…)`. */
const SHORT = 40;

export const exp: Operation = {
  arity: [1, 1],
  usage: 'exp(a)',
  says: 'e to the power a',
  dimension: (args) => pureAt(args, 0, 'exp'),
  value: ([a]) => Math.exp(a!),
  range: ([a]) => range(Math.max(0, libraryDown(Math.exp(a!.lo))), libraryUp(Math.exp(a!.hi)), a!.certain),
  slope: (_, value) => [value],
  slopeRange: (_, value) => [value],
  code: ([a]) => `Math.exp(${a})`,
  tex: (args) => {
    const exponent = args[0]!.tex;
    if (exponent.length > SHORT || exponent.includes('\\frac')) return called('\\exp', args);
    return { tex: `\\mathrm{e}^{${exponent}}`, binds: 'power' };
  },
};
