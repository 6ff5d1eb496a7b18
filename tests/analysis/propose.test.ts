import { describe, expect, test } from 'vitest';
import { nearestTo, proposalsOf } from '../../src/analysis/propose.ts';
import { between } from '../../src/quantity/preferred/nearest.ts';
import { seriesNamed } from '../../src/quantity/preferred/series.ts';
import { handbook } from '../handbook.ts';
import { methodBoard } from './method-board.ts';

/** Every pair, one after the other, by the same rule and none of the same code. */
function exhaustive(aim: number, at: (a: number, b: number) => number, chosen: [number, number], list: number[][]) {
  const pairs = list[0]!.flatMap((a) => list[1]!.map((b) => [a, b] as const));
  const miss = Math.min(...pairs.map(([a, b]) => Math.abs(at(a, b) - aim)));
  const move = ([a, b]: readonly [number, number]) =>
    Math.abs(Math.log(a / chosen[0])) + Math.abs(Math.log(b / chosen[1]));
  return pairs
    .filter(([a, b]) => Math.abs(at(a, b) - aim) <= miss + 1e-12 * Math.abs(aim))
    .toSorted((x, y) => move(x) - move(y))[0]!;
}

describe('the best pair agrees with every pair tried', () => {
  const feedback = (top: number, bottom: number) => 0.8 * (1 + top / bottom);
  const series = (a: number, b: number) => (a * b) / (a + b);
  test.each([
    ['E96', 3.3, [31.6e3, 10e3]],
    ['E96', 5, [75e3, 14.3e3]],
    ['E192', 12.07, [150e3, 10.7e3]],
    ['E24', 1.234, [5.6e3, 10e3]],
    ['E12', 2.5, [22e3, 10e3]],
  ] as const)('feedback of %s to %f V', (name, aim, chosen) => {
    const lists = chosen.map((value) => between(value / 2, value * 2, seriesNamed(name)));
    const found = nearestTo(aim, ([top, bottom]) => feedback(top!, bottom!), chosen, lists);
    const all = exhaustive(aim, feedback, [...chosen], lists);
    expect(feedback(found[0]!, found[1]!)).toBeCloseTo(feedback(all[0], all[1]), 10);
    expect(found).toEqual([...all]);
  });

  test('two capacitors in series to a load out of reach, and to one within', () => {
    const lists = [between(7.5e-12, 30e-12, seriesNamed('E24')), between(7.5e-12, 30e-12, seriesNamed('E24'))];
    for (const aim of [1e-12, 6.1e-12, 7.77e-12, 40e-12]) {
      const found = nearestTo(aim, ([a, b]) => series(a!, b!), [15e-12, 15e-12], lists);
      expect(found).toEqual([...exhaustive(aim, series, [15e-12, 15e-12], lists)]);
    }
  });
});

test('a step-down whose divider is off its window is offered a better one, with the margin that it brings', () => {
  const given = { ...handbook.methods.get('step-down')!.example.given, R_top: '49.9 kohm ±1 %', R_bot: '10 kohm ±1 %' };
  const board = methodBoard('rail', 'step-down', given);
  const [proposal] = proposalsOf(board);
  expect(proposal).toMatchObject({ id: 'rail.divider', of: 'rail.V_out', target: 5, differs: true });
  const { chosen, best } = proposal!;
  expect(chosen.result).toBeCloseTo(0.8 * 5.99, 10);
  expect(Math.abs(best.error!)).toBeLessThan(1e-3);
  const [top, bottom] = [best.values['rail.R_top']!, best.values['rail.R_bot']!];
  expect(best.result).toBeCloseTo(0.8 * (1 + top / bottom), 10);
  // By hand at the corner: top high, bottom low and the other way round, against half a window of 0.25 V.
  const high = 0.8 * (1 + (top * 1.01) / (bottom * 0.99)) - 5;
  const low = 5 - 0.8 * (1 + (top * 0.99) / (bottom * 1.01));
  const window = 1 - Math.max(high, low) / 0.25;
  expect(best.margin!).toBeLessThanOrEqual(window + 1e-9);
  expect(chosen.margin!).toBeLessThan(best.margin!);
  expect(chosen.check).toBe('rail.low');
});
