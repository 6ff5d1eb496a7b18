import { describe, expect, test } from 'vitest';
import { circuit, found } from '../analysis/found.ts';

// The figures of JCGM 100 and 101 are held in src/published/data/uncertainty.yaml; here stands what leads to them.
describe('JCGM 100:2008, H.2, UNC-09: means of joint readings (from memory)', () => {
  const readings = {
    V: [5.007, 4.994, 5.005, 4.99, 4.999],
    I: [19.663, 19.639, 19.64, 19.685, 19.678],
    phi: [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
  };
  const mean = (xs: readonly number[]) => xs.reduce((a, b) => a + b) / xs.length;
  const joint = (xs: readonly number[], ys: readonly number[]) =>
    xs.reduce((sum, x, i) => sum + (x - mean(xs)) * (ys[i]! - mean(ys)), 0) / (xs.length - 1) / xs.length;
  const error = (xs: readonly number[]) => Math.sqrt(joint(xs, xs));
  const correlation = (xs: readonly number[], ys: readonly number[]) => joint(xs, ys) / error(xs) / error(ys);
  const { V, I, phi } = readings;

  test('coefficients of the readings are those published: −0.36, 0.86, −0.65', () => {
    expect([correlation(V, I), correlation(V, phi), correlation(I, phi)].map((r) => r.toFixed(2))).toEqual([
      '-0.36',
      '0.86',
      '-0.65',
    ]);
  });
  test('shares in the variance add up to one, with those that work against the rest below zero', () => {
    const given = {
      V: `${mean(V)} V sd ${error(V)} V`,
      I: `${mean(I)} mA sd ${error(I)} mA`,
      phi: `${mean(phi)} sd ${error(phi)}`,
    };
    const correlations = `    correlations: { V with I: ${correlation(V, I)}, phi with V: ${correlation(V, phi)}, I with phi: ${correlation(I, phi)} }\n`;
    const { sensitivity } = found(circuit(given, { R: ['V / I * cos(phi)', 'ohm'] }) + correlations).results['x.R']!;
    expect(sensitivity.reduce((sum, { variance }) => sum + variance, 0)).toBeCloseTo(1, 9);
    expect(Math.min(...sensitivity.map(({ variance }) => variance))).toBeLessThan(0);
  });
});
