import { describe, expect, test } from 'vitest';
import { belongs, between, inE24, nearest, neighbours } from '../../../src/quantity/preferred/nearest.ts';
import { allSeries, seriesFor, seriesNamed } from '../../../src/quantity/preferred/series.ts';

const decade = (name: Parameters<typeof seriesNamed>[0]): number[] => {
  const { values, parts } = seriesNamed(name);
  return values.map((one) => one / parts);
};
/** 10^(i/n), rounded to so many decimals. */
const formula = (n: number, decimals: number): number[] =>
  Array.from({ length: n }, (_, i) => Math.round(10 ** (i / n) * 10 ** decimals) / 10 ** decimals);

describe('the series of IEC 60063', () => {
  test('PRV-01: E3 to E24, eight of which differ from the formula', () => {
    expect(decade('E24')).toEqual([
      1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2,
      9.1,
    ]);
    expect(decade('E12')).toEqual([1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2]);
    expect(decade('E6')).toEqual([1, 1.5, 2.2, 3.3, 4.7, 6.8]);
    expect(decade('E3')).toEqual([1, 2.2, 4.7]);
    const rounded = formula(24, 1);
    expect(decade('E24').filter((value, i) => value !== rounded[i])).toHaveLength(8);
  });

  test('PRV-02 and PRV-03: E48 and E96 follow the formula throughout', () => {
    expect(decade('E48')).toEqual(formula(48, 2));
    expect(decade('E96')).toEqual(formula(96, 2));
  });

  test('PRV-04: E192 follows it but for 9.20', () => {
    const differing = decade('E192').flatMap((value, i) => (value === formula(192, 2)[i] ? [] : [[i, value]]));
    expect(differing).toEqual([[185, 9.2]]);
    expect(formula(192, 2)[185]).toBe(9.19);
  });

  test('a tolerance belongs to one series, and one between two to the finer', () => {
    const of = (percent: number) => seriesFor(percent / 100).name;
    expect([80, 20, 10, 5, 2, 1, 0.5, 0.1].map(of)).toEqual(['E3', 'E6', 'E12', 'E24', 'E48', 'E96', 'E192', 'E192']);
    expect(of(7)).toBe('E24');
    expect(of(0.7)).toBe('E192');
  });
});

describe('values next to one', () => {
  test('PRV-05: the nearest of E96, as a maker chose them in TI LM5069 data sheet SNVS452G, 9.2.1.2.6', () => {
    const chosen = [47.62, 8.21, 4.18, 280, 53.6].map((value) => nearest(value * 1000, seriesNamed('E96')));
    expect(chosen).toEqual([47500, 8250, 4220, 280000, 53600]);
  });

  test('agree with a search through every value of twelve decades', () => {
    for (const series of allSeries) {
      const all = Array.from({ length: 12 }, (_, d) =>
        series.values.map((one) => (one / series.parts) * 10 ** (d - 6)),
      ).flat();
      for (let i = 0; i < 400; i++) {
        const value = 10 ** (-5 + (i * 10) / 400 + 1e-4);
        const { below, above } = neighbours(value, series);
        expect(below / all.findLast((one) => one <= value)!).toBeCloseTo(1, 12);
        expect(above / all.find((one) => one >= value)!).toBeCloseTo(1, 12);
      }
    }
  });

  test('a value belongs to its series in every decade, and 330 k is of E24 and not of E192', () => {
    for (const value of [4.7e-12, 4.7e-9, 1e-6, 0.047, 47, 4.7e3, 1e6])
      expect(belongs(value, seriesNamed('E24')), `${value}`).toBe(true);
    expect(belongs(330e3, seriesNamed('E192'))).toBe(false);
    expect(inE24(330e3)).toBe(true);
    expect(neighbours(330e3, seriesNamed('E192'))).toEqual({ below: 328e3, above: 332e3 });
    expect(between(1000, 10000, seriesNamed('E12'))).toHaveLength(13);
  });
});
