import { describe, expect, test } from 'vitest';
import { verdictOn } from '../../src/analysis/bench.ts';
import { find } from '../../src/analysis/find.ts';
import { shareBelow } from '../../src/analysis/share-below.ts';
import { readBench } from '../../src/spec/bench/read-bench.ts';
import { divider } from '../packet/packets.ts';
import { boardFrom } from '../spec/spec-text.ts';

const spec = `requirements:
  REQ-1: { says: The pack shall be measured, shown by: sense.full_scale, tested at: sense.tap }
${divider('12 kohm')}`;

function measured(rows: string) {
  const board = boardFrom(spec);
  const { readings, problems } = readBench(`point,value,unit,uncertainty,date,at\n${rows}`, 'bench.csv', board);
  expect(problems).toEqual([]);
  return find({ ...board, bench: readings }, { seed: 1, trials: 20000, digest: 'f'.repeat(64), tool: '1.0.0' });
}

describe('a reading beside its prediction', () => {
  // By hand: 36·12/162 = 2.66667; 36·11.88/163.38 = 2.61770 and 36·12.12/160.62 = 2.71648 at the ends.
  const { bench, requirements } = measured(
    'sense.tap,2.670,V,0.004,2026-03-02,\nsense.tap,2.714,V,0.004,2026-03-02,\nsense.tap,2.80,V,0.004,2026-03-02,\nsense.tap,2.593,V,0.001,2026-03-02,V_in = 35 V\n',
  );
  test('stands beside expected and ends, guarded by its uncertainty', () => {
    expect(bench[0]).toMatchObject({
      id: 'B-1',
      point: 'sense.tap',
      reads: 'sense.V_out',
      unit: 'V',
      verdict: 'as predicted',
    });
    expect(bench[0]!.expected).toBeCloseTo(2.666667, 6);
    expect(bench[0]!.min).toBeCloseTo(2.617701, 5);
    expect(bench[0]!.max).toBeCloseTo(2.716475, 5);
    expect(bench[0]!.accept_from).toBeCloseTo(2.621701, 5);
    expect(bench[0]!.accept_to).toBeCloseTo(2.712475, 5);
  });
  // Two parts of ±1 % over three deviations each: s = 2.66667·(150/162)·(0.01/3)·√2 = 0.011640 V, less 1.34 % by the cut at three.
  test('differs in deviations of both together', () => {
    const sd = 0.01164 * 0.9866;
    expect(bench[0]!.z).toBeCloseTo((2.67 - 2.666667) / Math.hypot(sd, 0.002), 1);
    expect(bench[0]!.percentile).toBeGreaterThan(0.55);
    expect(bench[0]!.percentile).toBeLessThan(0.67);
  });
  test('near an end is undecided, beyond it outside', () => {
    expect(bench.map(({ verdict }) => verdict)).toEqual(['as predicted', 'undecided', 'outside', 'as predicted']);
  });
  test('is predicted for what was applied', () => {
    expect(bench[3]!.expected).toBeCloseTo((35 * 12) / 162, 6);
    expect(bench[3]!.when).toEqual({ V_in: { value: 35, unit: 'V' } });
  });
  test('reopens the requirement that it is evidence for', () => {
    expect(bench[0]!.closes).toEqual(['REQ-1']);
    expect(requirements).toEqual([
      expect.objectContaining({
        id: 'REQ-1',
        methods: ['analysis', 'test'],
        state: 'reopened',
        readings: ['B-1', 'B-2', 'B-3', 'B-4'],
        open: ['B-2 is undecided', 'B-3 is outside'],
      }),
    ]);
    expect(measured('sense.tap,2.670,V,0.004,2026-03-02,\n').requirements[0]).toMatchObject({
      state: 'closed',
      open: [],
    });
    expect(measured('').requirements[0]).toMatchObject({ state: 'open', open: ['sense.tap is not read'] });
  });
});

test.each([
  [1.0, 0.1, 0, 2, 0, 'as predicted'],
  [1.9, 0.1, 0, 2, 2.5, 'unusual'],
  [1.95, 0.1, 0, 2, 2.5, 'undecided'],
  [2.05, 0.1, 0, 2, 3, 'undecided'],
  [2.2, 0.1, 0, 2, 3, 'outside'],
  [-0.2, 0.1, 0, 2, -3, 'outside'],
  [1.01, 0.02, 1, 1, 1, 'as predicted'],
  [1.03, 0.02, 1, 1, 3, 'outside'],
] as const)('%f ± %f against %f to %f is %s', (value, uncertainty, min, max, z, verdict) => {
  expect(verdictOn({ measured: value, uncertainty, min, max, z })).toBe(verdict);
});

test('the share of boards below a value goes on evenly inside a bar', () => {
  const spread = { histogram: { from: 0, to: 4, counts: [1, 3, 4, 2] } } as unknown as Parameters<typeof shareBelow>[0];
  expect([-1, 0, 0.5, 1.5, 4, 9].map((x) => shareBelow(spread, x))).toEqual([0, 0, 0.05, 0.25, 1, 1]);
});
