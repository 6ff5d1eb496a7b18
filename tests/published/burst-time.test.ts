import { expect, test } from 'vitest';
import { work } from './work.ts';

// Recomputed from first-order heating: dT(t) = dT_end + (dT_0 - dT_end)·exp(-t/tau), solved for dT(t) = dT_lim.
const burst = (given: Record<string, string>) =>
  work('burst-time', { R_th: '1 K/W', C_th: '500 J/K', dT_lim: '45 K', ...given })('t_lim');

test('the limit is reached where the rise of one mass crosses it', () => {
  expect(burst({ P: '60 W', dT_0: '10 K' })).toBeCloseTo(500 * Math.log((60 - 10) / (60 - 45)), 6);
});
test('a burst that settles below its start cools the mass: the limit is never reached', () => {
  expect(burst({ P: '5 W', dT_0: '10 K' })).toBeGreaterThan(10 * 500);
});
test('a start at the limit leaves no time', () => {
  expect(burst({ P: '60 W', dT_0: '45 K' })).toBe(0);
});
