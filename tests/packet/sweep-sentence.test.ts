import { describe, expect, test } from 'vitest';
import type { SweepFinding, SweepPoint } from '../../src/analysis/findings.ts';
import { whatToSee } from '../../src/packet/sweep-sentence.ts';
import { parseUnit } from '../../src/quantity/units.ts';

const sentence = (points: readonly Partial<SweepPoint>[], more: Partial<SweepFinding> = {}): string =>
  whatToSee({
    sweep: {
      circuit: 'x',
      of: 'x.T',
      unit: '°C',
      over: 'x.I',
      over_unit: 'A',
      stands_for: 'I',
      axis: 'condition',
      over_typical: 20,
      runs: [points.map((point) => ({ x: 0, typical: 0, min: 0, max: 0, ...point }))],
      proven: true,
      gap: 0,
      certain: true,
      apart: [],
      ...more,
    },
    of: parseUnit('°C'),
    over: parseUnit('A'),
    slack: parseUnit('K'),
  });
const slacks = (...all: number[]) => all.map((slack, i) => ({ x: 10 * (i + 1), slack }));

describe('against a limit', () => {
  test('where it comes nearest, rounded down', () => {
    expect(sentence(slacks(30, 20.019, 25))).toBe('Comes nearest to the limit at 20\u00a0A, with 20.0\u00a0K left.');
  });
  test('up to where it holds, on the safe side', () => {
    expect(sentence(slacks(10, 5, -10))).toBe('Holds up to 23.3\u00a0A.');
    expect(sentence(slacks(-10, 5, 10))).toBe('Holds from 16.7\u00a0A up.');
    expect(sentence(slacks(-10, 5, -5))).toBe('Holds from 16.7\u00a0A to 25.0\u00a0A.');
  });
  test('a chosen part would hold', () => {
    expect(sentence(slacks(10, -10), { axis: 'choice' })).toBe('Would hold up to 15.0\u00a0A.');
  });
  test('a dip inside, beyond all along, equally near all along', () => {
    expect(sentence(slacks(5, -1.001, 5))).toBe('Oversteps the limit round 20\u00a0A, by up to 1.01\u00a0K.');
    expect(sentence(slacks(-5, -6))).toBe('Beyond the limit all along, by up to 6.00\u00a0K.');
    expect(sentence(slacks(4, 4))).toBe('The limit is equally near all along, with 4.00\u00a0K left.');
  });
});

describe('without a limit', () => {
  const shape = (...all: [number, number][]) => all.map(([min, max], i) => ({ x: 10 * (i + 1), min, max }));
  test('rises, falls, peaks, dips', () => {
    expect(sentence(shape([1, 2], [2, 4], [3, 6]))).toBe(
      'Rises from 1.00\u00a0°C at the least to 6.00\u00a0°C at the most.',
    );
    expect(sentence(shape([3, 6], [2, 4], [1, 2]))).toBe(
      'Falls from 6.00\u00a0°C at the most to 1.00\u00a0°C at the least.',
    );
    expect(sentence(shape([1, 2], [2, 8], [1, 6]))).toBe('Peaks at 20\u00a0A, with up to 8.00\u00a0°C.');
    expect(sentence(shape([5, 9], [2, 3], [4, 6]))).toBe(
      'Least at 20\u00a0A, down to 2.00\u00a0°C; greatest at 10\u00a0A, up to 9.00\u00a0°C.',
    );
  });
});
