import { describe, expect, test } from 'vitest';
import { type Boards, boardsOf } from '../../../src/analysis/simulate/boards.ts';
import { chunk } from '../../../src/analysis/simulate/counts.ts';
import { merged } from '../../../src/analysis/simulate/merge.ts';
import { simulateByScript } from '../../../src/analysis/simulate/script.ts';
import { simdBlocks } from '../../../src/analysis/simulate/simd/blocks.ts';
import { machineFor } from '../../../src/analysis/simulate/simd/machine.ts';
import { Run } from '../../../src/analysis/simulate/simd/run.ts';
import { simulate } from '../../../src/analysis/simulate/simulate.ts';
import { wholeSpreads } from '../../../src/analysis/simulate/whole.ts';
import { madeUpBoard } from '../../../src/bench/made-up-board.ts';
import { threaded } from '../../../src/site/simulate-threads.ts';

const board = madeUpBoard(40);
const slacks = { counted: board.outputs.map(() => true), decides: board.outputs.map((_, i) => i % 2 === 0) };
const boards: Boards = boardsOf(board, board.variables, slacks, 5);

function counted(trials: number, block: number, shares: (index: number) => number = () => 0) {
  const machine = machineFor(boards, block);
  const chunks = [...new Array(Math.ceil(trials / chunk)).keys()];
  const runs = Math.max(...chunks.map(shares)) + 1;
  return merged(
    Array.from({ length: runs }, (_, r) => {
      const run = new Run(machine, trials);
      for (const index of chunks.filter((c) => shares(c) === r)) run.count(index);
      return run.finish();
    }),
    trials,
  );
}

describe('the same bits', () => {
  const trials = 50_001;
  const usual = counted(trials, 512);
  test('all quantiles could be told', () => {
    expect(usual.spreads).not.toContain(undefined);
  });
  test.each([8, 64, 256, 1024, 4096, 8192])('for blocks of %d', (block) => {
    expect(counted(trials, block)).toEqual(usual);
  });
  test('for any share of the chunks among runs, in any order', () => {
    expect(counted(trials, 512, (c) => c % 2)).toEqual(usual);
    expect(counted(trials, 512, (c) => (6 - c) % 3)).toEqual(usual);
    expect(counted(trials, 512, (c) => (c === 3 ? 0 : 1))).toEqual(usual);
  });
  test('for one, two and three threads', () => {
    const options = { seed: 5, trials: 210_001 };
    const one = simulate(board, board.variables, slacks, options);
    for (const threads of [1, 2, 3])
      expect(simulate(board, board.variables, slacks, options, threaded(threads))).toEqual(one);
  });
});

/** Every value of every output, at once. */
function whole(trials: number) {
  const values: Float64Array[] = [];
  const spreads = wholeSpreads(
    boards.outputs,
    trials,
    () => simdBlocks(boards),
    (column) => values.push(column.slice()),
  );
  return { values, spreads };
}

describe.each([1, 2, 3, 64, 999, 4096, 4097, 8192, 8193, 30_000])(
  '%d boards, counted and looked at one by one',
  (trials) => {
    const { spreads, failures, failed } = counted(trials, 512);
    const { values, spreads: plain } = whole(trials);

    test('quantiles are the same order statistics', () => {
      expect(spreads.map((spread) => spread?.quantiles)).toEqual(plain.map(({ quantiles }) => quantiles));
    });
    test('mean and deviation agree', () => {
      plain.forEach(({ mean, sd }, k) => {
        expect(Math.abs(spreads[k]!.mean - mean)).toBeLessThanOrEqual(1e-14 * Math.abs(mean));
        if (trials > 1) expect(Math.abs(spreads[k]!.sd - sd)).toBeLessThanOrEqual(1e-11 * sd);
      });
    });
    test('bars hold every board between their edges', () => {
      spreads.forEach((spread, k) => {
        const { from, to, counts } = spread!.histogram;
        if (from === to) return;
        const width = (to - from) / counts.length;
        const sorted = values[k]!.toSorted();
        expect(from).toBeLessThanOrEqual(sorted[0]!);
        expect(to).toBeGreaterThanOrEqual(sorted.at(-1)!);
        let below = 0;
        counts.forEach((count, i) => {
          below += count;
          // Of values that stand on an edge, rounding may put one on either side.
          const edge = from + width * (i + 1);
          const [low, high] = [edge - 1e-9 * width, edge + 1e-9 * width].map((x) => sorted.filter((v) => v < x).length);
          expect(below).toBeGreaterThanOrEqual(low!);
          expect(below).toBeLessThanOrEqual(high!);
        });
        expect(below).toBe(trials);
      });
    });
    test('failures are those that are below zero', () => {
      expect(failures).toEqual(values.map((column) => column.filter((x) => !(x >= 0)).length));
      const bad = Array.from({ length: trials }, (_, i) =>
        values.some((column, k) => boards.decides[k] && !(column[i]! >= 0)),
      );
      expect(failed).toBe(bad.filter(Boolean).length);
    });
  },
);

test('without SIMD the results are the same to 1e-12', () => {
  const trials = 20_000;
  const [simd, script] = [counted(trials, 512), simulateByScript(boards, trials)];
  expect(script.failures).toEqual(simd.failures);
  expect(script.failed).toBe(simd.failed);
  script.spreads.forEach(({ mean, sd, quantiles }, k) => {
    const spread = simd.spreads[k]!;
    [mean, ...quantiles].forEach((value, i) => {
      expect(Math.abs([spread.mean, ...spread.quantiles][i]! - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value));
    });
    expect(Math.abs(spread.sd - sd)).toBeLessThanOrEqual(1e-11 * sd);
  });
});
