import { describe, expect, test } from 'vitest';
import { work } from './work.ts';

/** Peak of a capacitor whose value falls with its voltage, met through R and L: fourth-order steps of the circuit itself. */
function peak(V: number, L: number, R: number, C: (v: number) => number): number {
  const swing = Math.sqrt(L * C(0));
  const h = Math.sqrt(L * C(3 * V)) / 300;
  const slope = (i: number, v: number): [number, number] => [(V - R * i - v) / L, i / C(v)];
  let [i, v, most] = [0, 0, 0];
  for (let t = 0; t < 6 * swing; t += h) {
    const [a, b] = slope(i, v);
    const [c, d] = slope(i + (h / 2) * a, v + (h / 2) * b);
    const [e, f] = slope(i + (h / 2) * c, v + (h / 2) * d);
    const [g, k] = slope(i + h * e, v + h * f);
    i += (h / 6) * (a + 2 * c + 2 * e + g);
    v += (h / 6) * (b + 2 * d + 2 * f + k);
    most = Math.max(most, v);
  }
  return most;
}

const curves: Record<string, (v: number) => number> = {
  'falls in a straight line': (v) => Math.max(1 - v / 250, 0.3),
  'halves with each 50 V': (v) => 0.5 ** (v / 50),
  'falls early': (v) => 1 / (1 + (v / 50) ** 2),
  'falls in one step at the pack voltage': (v) => (v < 50 ? 1 : 0.3),
  'falls to a floor': (v) => 0.2 + 0.8 / (1 + Math.exp((v - 40) / 8)),
};

const found = (R: number, k_a: number, k_b: number): number =>
  work('ceramic-overshoot', {
    V: '50 V',
    L: '1 uH',
    C_0: '20 uF',
    R: `${R} ohm`,
    k_a: String(k_a),
    k_b: String(k_b),
  })('V_pk');

describe.each(Object.entries(curves))('ceramics whose capacitance %s', (_, k) => {
  test.each([0, 0.02, 0.05, 0.1, 0.2, 0.4, 1])('the bound is not passed with %d Ω', (R) => {
    const highest = peak(50, 1e-6, R, (v) => 20e-6 * k(v));
    expect(found(R, 1, k(highest))).toBeGreaterThanOrEqual(highest * (1 - 1e-6));
  });

  test('without losses it is exact with the two weighted means', () => {
    const highest = peak(50, 1e-6, 0, (v) => 20e-6 * k(v));
    const mean = (from: number, to: number): number => {
      const n = 20_000;
      let [sum, weight] = [0, 0];
      for (let j = 0; j < n; j++) {
        const v = from + ((j + 0.5) / n) * (to - from);
        sum += Math.abs(v - 50) * k(v);
        weight += Math.abs(v - 50);
      }
      return sum / weight;
    };
    expect(Math.abs(found(0, mean(0, 50), mean(50, highest)) / highest - 1)).toBeLessThan(2e-3);
  });
});

test('a ceramic that loses half at the pack voltage passes twice the pack', () => {
  expect(peak(50, 1e-6, 0.02, (v) => 20e-6 * 0.5 ** (v / 50))).toBeGreaterThan(2.5 * 50);
});
