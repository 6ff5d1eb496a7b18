import { describe, expect, test } from 'vitest';
import { work } from './work.ts';

// Closed forms of the handbook against brute-force models that share no equation with them.

function near(got: number, wanted: number, share: number): void {
  expect(Math.abs(got - wanted), `${got} instead of ${wanted}`).toBeLessThanOrEqual(share * Math.abs(wanted));
}

/** Rms of the alternating part of the bus current of a sine-triangle inverter, phase rms 1, by switching it. */
function busRipple(M: number, phi: number): number {
  const periods = 101;
  const steps = 2000;
  let sum = 0;
  let squares = 0;
  for (let k = 0; k < periods * steps; k++) {
    const angle = ((k + 0.5) / (periods * steps)) * 2 * Math.PI;
    const carrier = Math.abs((((k + 0.5) / steps + 0.25) % 1) * 4 - 2) - 1;
    let current = 0;
    for (let phase = 0; phase < 3; phase++) {
      const at = angle - (phase * 2 * Math.PI) / 3;
      if (M * Math.cos(at) > carrier) current += Math.SQRT2 * Math.cos(at - phi);
    }
    sum += current;
    squares += current * current;
  }
  const n = periods * steps;
  return Math.sqrt(squares / n - (sum / n) ** 2);
}

describe('DCL-01: bus ripple against a switched inverter', () => {
  test.each([
    [1.0, 0],
    [0.8, 30],
    [0.6, 60],
    [0.5, 0],
  ])('M = %d, phi = %d°', (M, phi) => {
    const method = work('dc-link-capacitor', { I_rms: '1 A', M: String(M), phi: `${phi} deg` });
    near(method('I_C'), busRipple(M, (phi * Math.PI) / 180), 0.0015);
  });
});

/** Peaks of voltage and current when an empty capacitor meets a source through R and L, by fourth-order steps. */
function plugIn(V: number, L: number, C: number, R: number): { V_pk: number; I_pk: number } {
  const end = 12 * Math.max(Math.sqrt(L * C), R * C);
  const h = Math.min(Math.sqrt(L * C), L / R) / 400;
  let [i, v, V_pk, I_pk] = [0, 0, 0, 0];
  const slope = (i: number, v: number): [number, number] => [(V - R * i - v) / L, i / C];
  for (let t = 0; t < end; t += h) {
    const [a, b] = slope(i, v);
    const [c, d] = slope(i + (h / 2) * a, v + (h / 2) * b);
    const [e, f] = slope(i + (h / 2) * c, v + (h / 2) * d);
    const [g, k] = slope(i + h * e, v + h * f);
    i += (h / 6) * (a + 2 * c + 2 * e + g);
    v += (h / 6) * (b + 2 * d + 2 * f + k);
    V_pk = Math.max(V_pk, v);
    I_pk = Math.max(I_pk, i);
  }
  return { V_pk, I_pk };
}

describe('plugging in, against a step-by-step circuit', () => {
  test.each([
    ['hardly damped', 20e-3],
    ['half damped', 0.2],
    ['nearly critical', 0.44],
    ['more than critical', 1],
  ])('%s', (_, R) => {
    const found = work('hot-plug', { V: '50 V', L: '1 uH', C: '20 uF', R: `${R} ohm` });
    const { V_pk, I_pk } = plugIn(50, 1e-6, 20e-6, R);
    near(found('V_pk'), V_pk, 1e-3);
    near(found('I_pk'), I_pk, 1e-3);
  });
});

test('MOS-08: conduction of a switch, by adding up the period', () => {
  const [M, phi, I, R] = [0.8, 0.5, 60, 1.5e-3];
  const n = 20_000;
  let loss = 0;
  for (let k = 0; k < n; k++) {
    const angle = ((k + 0.5) / n) * 2 * Math.PI;
    const current = Math.SQRT2 * I * Math.cos(angle - phi);
    loss += (0.5 * (1 + M * Math.cos(angle)) * current * current * R) / n;
  }
  near(work('half-bridge', { I_rms: '60 A', R_25: '1.5 mohm', a_R: '0 1/K' })('P_cond'), loss, 1e-6);
});

test('MOS-11: turn-on by the slope, by small steps', () => {
  const [C_gd, C_gs, R, S, V] = [60e-12, 4500e-12, 5, 5e9, 60];
  const n = 200_000;
  const h = V / S / n;
  let gate = 0;
  for (let k = 0; k < n; k++) gate += (h * (C_gd * S - gate / R)) / (C_gd + C_gs);
  const found = work('miller-turn-on', {
    V_bus: '60 V',
    S: '5 V/ns',
    C_gd: '60 pF',
    C_gs: '4500 pF',
    R_off: '2 ohm',
    R_drv: '1.5 ohm',
    R_int: '1.5 ohm',
  });
  near(found('V_gate'), gate, 1e-4);
});

describe('DCD-11: damped input filter', () => {
  const filter = (f: number, R_d: number) =>
    work('input-filter', {
      L: '330 uH',
      R_L: '1 nohm',
      C: '470 uF',
      C_d: '1175 uF',
      R_d: `${R_d} ohm`,
      f: `${f} Hz`,
    });
  const frequencies = Array.from({ length: 400 }, (_, k) => 100 * 10 ** (k / 300));
  const peak = (R_d: number): number => Math.max(...frequencies.map((f) => filter(f, R_d)('Z_out')));
  const best = filter(400, 1)('R_best');

  test('its peak over a sweep is the closed form at the best resistor', () => {
    near(peak(best), filter(400, 1)('Z_best'), 2e-3);
  });
  test('any other resistor peaks higher', () => {
    expect(peak(0.7 * best)).toBeGreaterThan(peak(best));
    expect(peak(1.4 * best)).toBeGreaterThan(peak(best));
  });
});

test('bootstrap: the level it settles to, refill by refill', () => {
  const given = {
    V_drv: '12 V',
    V_f: '0.8 V',
    C_b: '220 nF',
    k_C: '1',
    Q_g: '100 nC',
    Q_rr: '10 nC',
    I_hs: '200 uA',
    R_gs: '10 kohm',
    f_sw: '20 kHz',
    D_max: '0.95',
    t_d: '300 ns',
    R_b: '4.7 ohm',
    R_dio: '2 ohm',
  };
  const found = work('bootstrap', given);
  let level = found('V_full');
  let lowest = level;
  for (let period = 0; period < 200; period++) {
    lowest = level - found('Q_cyc') / found('C_eff');
    level = found('V_full') - (found('V_full') - lowest) * Math.exp(-found('t_low') / found('tau'));
  }
  near(found('V_min'), lowest, 1e-9);
});
