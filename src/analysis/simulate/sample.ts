import { normalCdf, normalQuantile } from '../statistics.ts';
import type { Variable } from '../variable.ts';
import { streamOf, uniformAt } from './stream.ts';

/** Chance mass of a normal below minus three deviations, which the truncation takes away on either side. */
const tail = normalCdf(-3);

/**
 * Value of a variable on one simulated board, from a number in (0, 1). The inverse of the distribution, so that one
 * number gives one value.
 */
export function valueAt({ draw, min, typ, max }: Variable, u: number): number {
  switch (draw.kind) {
    case 'held':
      return typ;
    case 'uniform':
      return min + (max - min) * u;
    case 'triangular':
      return triangular(min, typ, max, u);
    case 'measured':
      return typ + draw.sd * normalQuantile(u);
    case 'normal': {
      const z = normalQuantile(tail + u * (1 - 2 * tail));
      return typ + z * (z < 0 ? (typ - min) / 3 : (max - typ) / 3);
    }
    default:
      return draw satisfies never;
  }
}

/** Inverse of the triangular distribution with its mode at `typ`. */
function triangular(min: number, typ: number, max: number, u: number): number {
  const width = max - min;
  if (width === 0) return typ;
  const split = (typ - min) / width;
  return u < split ? min + Math.sqrt(u * width * (typ - min)) : max - Math.sqrt((1 - u) * width * (max - typ));
}

/** Fills a column with a variable's values on boards `from`, `from` + 1, … */
export function sampler(variable: Variable, seed: number): (column: Float64Array, from: number) => void {
  const stream = streamOf(seed, variable.id);
  return (column, from) => {
    for (let i = 0; i < column.length; i++) column[i] = valueAt(variable, uniformAt(stream, from + i));
  };
}
