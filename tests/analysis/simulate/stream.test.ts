import { describe, expect, test } from 'vitest';
import { baseOf, chanceOf, keyOf, wordAt } from '../../../src/analysis/simulate/stream.ts';
import { unevenness } from './chi.ts';

const trials = 1 << 18;
const names = ['bus_sense.R_top', 'bus_sense.R_bot', 'bus_sense.R_bot drift', 'stage.R_on', 'stage.R_on #2', 'a', 'b'];

function words(name: string, count = trials, seed = 1): Int32Array {
  const key = keyOf(seed, name);
  return Int32Array.from({ length: count }, (_, trial) => wordAt(key, baseOf(trial)));
}
const streams = new Map(names.map((name) => [name, words(name)]));

/** Five deviations: once in two million. */
const allowed = 5;

/** Correlation of two rows of words, in deviations of that of chance. */
function correlation(a: Int32Array, b: Int32Array, lag = 0): number {
  let sum = 0;
  const n = a.length - lag;
  for (let i = 0; i < n; i++) sum += chanceOf(a[i]!) * chanceOf(b[i + lag]!) - 0.25;
  // Variance of the product of two chances, less 1/4: 1/9 − 1/16; the means take their part.
  return sum / Math.sqrt(n * (1 / 9 - 1 / 16));
}

/** Counts in a square of 64 × 64 cells, of pairs `lag` apart. */
function pairs(a: Int32Array, b: Int32Array, lag = 0): Uint32Array {
  const counts = new Uint32Array(4096);
  for (let i = 0; i + lag < a.length; i++) counts[((a[i]! >>> 26) << 6) | (b[i + lag]! >>> 26)]!++;
  return counts;
}

describe.each(names)('the stream of %s', (name) => {
  const stream = streams.get(name)!;
  test('falls evenly over 0 … 1, in its upper and in its lower bits', () => {
    for (const shift of [16, 8, 0]) {
      const counts = new Uint32Array(shift === 0 ? 256 : 4096);
      for (const word of stream) counts[shift === 16 ? word >>> 20 : shift === 8 ? (word >>> 8) & 4095 : word & 255]!++;
      expect(Math.abs(unevenness(counts))).toBeLessThan(allowed);
    }
  });
  test('says nothing of a later trial', () => {
    for (const lag of [1, 2, 3, 7, 64, 512, 8192]) {
      expect(Math.abs(correlation(stream, stream, lag))).toBeLessThan(allowed);
      expect(Math.abs(unevenness(pairs(stream, stream, lag)))).toBeLessThan(allowed);
    }
  });
  test('says nothing of another stream, nor of the same name under another seed', () => {
    for (const other of [
      ...names.filter((one) => one !== name).map((one) => streams.get(one)!),
      words(name, trials, 2),
    ]) {
      expect(Math.abs(correlation(stream, other))).toBeLessThan(allowed);
      expect(Math.abs(unevenness(pairs(stream, other)))).toBeLessThan(allowed);
    }
  });
  test('has half of its bits turned by each bit of the trial', () => {
    const key = keyOf(1, name);
    for (let bit = 0; bit < 20; bit++) {
      let turned = 0;
      for (let trial = 0; trial < 4096; trial++) {
        let bits = wordAt(key, baseOf(trial)) ^ wordAt(key, baseOf(trial ^ (1 << bit)));
        for (; bits !== 0; bits &= bits - 1) turned++;
      }
      expect(turned / 4096).toBeGreaterThan(15.5);
      expect(turned / 4096).toBeLessThan(16.5);
    }
  });
});

test('many streams together: correlations of pairs are spread as chance spreads them', () => {
  const count = 120;
  const rows = Array.from({ length: count }, (_, i) => words(`part_${i}`, 4096));
  let [squares, most, all] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < i; j++) {
      const z = correlation(rows[i]!, rows[j]!);
      squares += z * z;
      most = Math.max(most, Math.abs(z));
      all++;
    }
  }
  expect(squares / all).toBeGreaterThan(0.94);
  expect(squares / all).toBeLessThan(1.06);
  expect(most).toBeLessThan(5.5);
});

test('sums of many streams spread as sums of independent numbers', () => {
  const count = 64;
  const rows = Array.from({ length: count }, (_, i) => words(`part_${i}`, 1 << 15));
  let squares = 0;
  for (let t = 0; t < 1 << 15; t++) {
    let sum = 0;
    for (const row of rows) sum += chanceOf(row[t]!) - 0.5;
    squares += sum * sum;
  }
  const variance = squares / 2 ** 15 / (count / 12);
  expect(Math.abs(variance - 1)).toBeLessThan(5 * Math.sqrt(2 / 2 ** 15));
});

test('tails are reached as often as they should be', () => {
  const key = keyOf(7, 'tail');
  const seen = [1e-3, 1e-4, 1e-5].map(() => [0, 0]);
  const n = 4_000_000;
  for (let trial = 0; trial < n; trial++) {
    const u = chanceOf(wordAt(key, baseOf(trial)));
    [1e-3, 1e-4, 1e-5].forEach((p, i) => {
      if (u < p) seen[i]![0]!++;
      if (u > 1 - p) seen[i]![1]!++;
    });
  }
  [1e-3, 1e-4, 1e-5].forEach((p, i) => {
    for (const count of seen[i]!) expect(Math.abs(count - n * p)).toBeLessThan(allowed * Math.sqrt(n * p));
  });
});

test('chances are the midpoints of 2³² parts, never 0 and never 1', () => {
  expect(chanceOf(-(2 ** 31))).toBe(2 ** -33);
  expect(chanceOf(2 ** 31 - 1)).toBe(1 - 2 ** -33);
  expect(chanceOf(0) - chanceOf(-1)).toBe(2 ** -32);
});

test('keys of a thousand names are all different, in both halves', () => {
  const keys = Array.from({ length: 1000 }, (_, i) => keyOf(1, `part_${i}`));
  expect(new Set(keys.map(({ first }) => first)).size).toBe(1000);
  expect(new Set(keys.map(({ second }) => second)).size).toBe(1000);
});
