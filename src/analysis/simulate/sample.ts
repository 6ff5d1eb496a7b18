import { normalCdf, normalQuantile } from '../statistics.ts';
import type { Variable } from '../variable.ts';
import { streamOf, uniformAt } from './stream.ts';

/** Chance mass of a normal below minus three deviations, which the truncation takes away on either side. */
const tail = normalCdf(-3);
const kept = 1 - 2 * tail;

/** Fills a column with a variable's values on boards `from`, `from` + 1, … */
export type Sampler = (column: Float64Array, from: number) => void;

/**
 * Draws a variable: each number from the stream gives one value, by the inverse of its distribution. Cutting a normal off at
 * its limits by the inverse is the same as drawing again beyond them. A loop for each kind, so that each runs at full speed.
 */
export function sampler({ id, draw, min, typ, max }: Variable, seed: number): Sampler {
  const stream = streamOf(seed, id);
  switch (draw.kind) {
    case 'held':
      return (column) => column.fill(typ);
    case 'uniform':
      return (column, from) => uniform(column, from, stream, min, max - min);
    case 'triangular':
      return max > min
        ? (column, from) => triangular(column, from, stream, min, typ, max)
        : (column) => column.fill(typ);
    case 'measured':
      return (column, from) => measured(column, from, stream, typ, draw.sd);
    case 'normal':
      return (column, from) => normal(column, from, stream, typ, (typ - min) / 3, (max - typ) / 3);
    default:
      return draw satisfies never;
  }
}

function uniform(column: Float64Array, from: number, stream: number, min: number, width: number): void {
  for (let i = 0; i < column.length; i++) column[i] = min + width * uniformAt(stream, from + i);
}

/** Inverse of the triangular distribution with its mode at `typ`. */
function triangular(column: Float64Array, from: number, stream: number, min: number, typ: number, max: number): void {
  const width = max - min;
  const split = (typ - min) / width;
  const [rising, falling] = [width * (typ - min), width * (max - typ)];
  for (let i = 0; i < column.length; i++) {
    const u = uniformAt(stream, from + i);
    column[i] = u < split ? min + Math.sqrt(u * rising) : max - Math.sqrt((1 - u) * falling);
  }
}

function measured(column: Float64Array, from: number, stream: number, mean: number, sd: number): void {
  for (let i = 0; i < column.length; i++) column[i] = mean + sd * normalQuantile(uniformAt(stream, from + i));
}

/** Normal on each side of typ with a deviation of its own, either side equally likely. */
function normal(column: Float64Array, from: number, stream: number, typ: number, left: number, right: number): void {
  for (let i = 0; i < column.length; i++) {
    const z = normalQuantile(tail + uniformAt(stream, from + i) * kept);
    column[i] = typ + z * (z < 0 ? left : right);
  }
}
