import { expect, test } from 'vitest';
import { circuit, found } from './found.ts';

// The published case, JCGM 100:2008, H.2, stands with the other published checks (UNC-09).
const sum = circuit({ a: '1 sd 3', b: '2 sd 4' }, { y: ['a + b', '1'], z: ['a - b', '1'] });
const together = (r: number) => found(`${sum}    correlations: { b with a: ${r} }\n`, { trials: 100_000 }).results;

test.each([-1, -0.5, 0, 0.6, 1])('variance of a sum and a difference: 9 + 16 ± 24·r at r = %d', (r) => {
  const results = together(r);
  for (const [id, sign] of [
    ['x.y', 1],
    ['x.z', -1],
  ] as const) {
    const variance = 25 + sign * 24 * r;
    const { spread, rss } = results[id]!;
    expect(Math.abs(spread!.sd ** 2 / variance - 1)).toBeLessThan(0.02);
    expect(((rss.max - rss.min) / 8) ** 2).toBeCloseTo(variance, 9);
  }
});

test('shares in the variance add up to one, what works against the rest below zero', () => {
  const { sensitivity } = together(0.9)['x.z']!;
  expect(sensitivity.reduce((all, { variance }) => all + variance, 0)).toBeCloseTo(1, 9);
  // a: 9 − 0.9·12 = −1.8 of 25 − 21.6 = 3.4
  expect(sensitivity.find(({ input }) => input === 'x.a')!.variance).toBeCloseTo(-1.8 / 3.4, 9);
});

test('the worst case keeps the whole box', () => {
  expect(together(0.9)['x.z']!.worst).toMatchObject({ min: 1 - 12 - (2 + 16), max: 1 + 12 - (2 - 16) });
});

test('several alike are each drawn with their own', () => {
  const twice = `${sum}    count: 2\n    correlations: { a with b: 0.6 }\n    checks:\n      low: { holds: y <= 12, because: test }\n`;
  const [check] = found(twice, { trials: 100_000 }).checks;
  // P(y ≤ 12) = Φ(9/√39.4) on each; both hold with the square of it.
  const one = 0.92418;
  expect(Math.abs(check!.fail_fraction!.estimate - (1 - one ** 2))).toBeLessThan(0.004);
});
