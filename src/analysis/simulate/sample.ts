import { normalCdf } from '../statistics.ts';
import type { Variable } from '../variable.ts';
import { upperDeviate } from './normal-table.ts';
import { baseOf, chanceOf, type Key, keyOf, wordAt } from './stream.ts';

/**
 * How a variable is drawn: the numbers that a loop over boards needs. Each chance word gives one value, by the inverse
 * of the distribution. Cutting a normal off at its limits by the inverse is the same as drawing again beyond them.
 */
export type Law =
  | { readonly kind: 'held'; readonly value: number }
  | { readonly kind: 'uniform'; readonly key: Key; readonly min: number; readonly width: number }
  | {
      readonly kind: 'triangular';
      readonly key: Key;
      readonly min: number;
      readonly max: number;
      /** Chance of the rising side, and the squares that either side reaches at chance 1. */
      readonly split: number;
      readonly rising: number;
      readonly falling: number;
    }
  | {
      readonly kind: 'normal';
      readonly key: Key;
      readonly typ: number;
      /** Deviation on each side of typ. */
      readonly left: number;
      readonly right: number;
      /** Chance that a normal number is within the limits. */
      readonly kept: number;
    };

/** Chance that a normal number is within three deviations. */
const withinThree = 1 - 2 * normalCdf(-3);

export function lawOf({ id, draw, min, typ, max }: Variable, seed: number): Law {
  const key = keyOf(seed, id);
  const width = max - min;
  switch (draw.kind) {
    case 'held':
      return { kind: 'held', value: typ };
    case 'uniform':
      return { kind: 'uniform', key, min, width };
    case 'triangular':
      return width > 0
        ? {
            kind: 'triangular',
            key,
            min,
            max,
            split: (typ - min) / width,
            rising: width * (typ - min),
            falling: width * (max - typ),
          }
        : { kind: 'held', value: typ };
    case 'measured':
      return { kind: 'normal', key, typ, left: draw.sd, right: draw.sd, kept: 1 };
    case 'normal':
      return { kind: 'normal', key, typ, left: (typ - min) / 3, right: (max - typ) / 3, kept: withinThree };
    default:
      return draw satisfies never;
  }
}

/** Fills a column with values on boards `from`, `from` + 1, … */
export function fill(column: Float64Array, law: Law, from: number): void {
  if (law.kind === 'held') {
    column.fill(law.value);
    return;
  }
  const value = inverse(law);
  for (let i = 0; i < column.length; i++) column[i] = value(wordAt(law.key, baseOf(from + i)));
}

function inverse(law: Exclude<Law, { kind: 'held' }>): (word: number) => number {
  switch (law.kind) {
    case 'uniform': {
      const { min, width } = law;
      return (word) => min + width * chanceOf(word);
    }
    case 'triangular': {
      const { min, max, split, rising, falling } = law;
      return (word) => {
        const u = chanceOf(word);
        return u < split ? min + Math.sqrt(u * rising) : max - Math.sqrt((1 - u) * falling);
      };
    }
    case 'normal': {
      const { typ, left, right } = law;
      const scale = law.kept * 2 ** -32;
      return (word) => {
        // Chance from the nearer end; a word and the one as far on the other side lie equally deep.
        const above = word + 0.5;
        const z = upperDeviate(0.5 - Math.abs(above) * scale);
        return typ + z * (above < 0 ? -left : right);
      };
    }
    default:
      return law satisfies never;
  }
}
