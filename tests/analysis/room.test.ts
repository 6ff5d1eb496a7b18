import { describe, expect, test } from 'vitest';
import { circuit, found } from './found.ts';

const divider = (changes: Record<string, string> = {}) =>
  found(
    circuit(
      { V_in: '30 V to 42 V typ 36 V', R_top: '150 kohm ±1 %', R_bot: '10 kohm ±1 %', ...changes },
      { V: ['V_in * R_bot / (R_top + R_bot)', 'V'] },
      { scale: 'V <= 3 V', floor: 'V >= 1.75 V' },
    ),
  );

describe('room of a part', () => {
  const room = divider().room.find(({ input }) => input === 'x.R_bot')!;
  test('goes as far as hand arithmetic says', () => {
    // 42·1.01·x/(148.5 + 1.01·x) = 3 and 30·0.99·x/(151.5 + 0.99·x) = 1.75
    expect(room.high).toMatchObject({ check: 'x.scale', value: expect.closeTo((3 * 148.5) / (39 * 1.01), 4) });
    expect(room.low).toMatchObject({ check: 'x.floor', value: expect.closeTo((1.75 * 151.5) / (28.25 * 0.99), 4) });
  });
  test('the checks hold just inside and fail just outside', () => {
    const verdict = (kohm: number, check: string) =>
      divider({ R_bot: `${kohm} kohm ±1 %` }).checks.find(({ id }) => id === check)!.verdict;
    for (const end of [room.low!, room.high!]) {
      const outward = end.value > 10 ? 1 : -1;
      expect(verdict(end.value * (1 - outward * 1e-4), end.check)).not.toBe('fail');
      expect(verdict(end.value * (1 + outward * 1e-4), end.check)).toBe('fail');
    }
  });
  test('its tolerance may get so loose', () => {
    // x/(148.5 + x) = 3/42 at R_bot = 10·(1 + k·1 %)
    const k = ((3 * 148.5) / 39 / 10 - 1) / 0.01;
    const floor = (1 - (1.75 * 151.5) / 28.25 / 10) / 0.01;
    expect(room.tolerance!.factor).toBeCloseTo(Math.min(k, floor), 4);
  });
});

test('a rating may go down to where its check stops it', () => {
  const findings = found(
    `circuits:\n  x:\n    refs: { P_r: R1 }\n    given: { I: 1 A to 5 A typ 2 A, P_r: 3 W }\n    equations:\n      P: { is: I^2 * 0.1 ohm, unit: W, says: Heat }\n    checks:\n      hot: { holds: P <= P_r, because: test }\n`,
  );
  expect(findings.room).toMatchObject([{ input: 'x.P_r', low: { value: expect.closeTo(2.5, 5), check: 'x.hot' } }]);
});

test('a check that fails already stops nothing', () => {
  const findings = found(circuit({ R: '10 ohm ±1 %' }, { y: ['R', 'ohm'] }, { bad: 'y <= 5 ohm' }));
  expect(findings.room).toEqual([]);
});

test('a test point reads the result at its stimulus, with parts new and other conditions typical', () => {
  const text = `conditions: { T_amb: -10 degC to 45 degC typ 25 degC }\ncircuits:\n  pack:\n    given: { V: 30 V to 42 V typ 36 V }\n  x:\n    given: { V_in: pack.V, R_top: 150 kohm ±1 % ±100 ppm/K, R_bot: 10 kohm ±1 % age ±5 % }\n    equations:\n      V: { is: V_in * R_bot / (R_top + R_bot), unit: V, says: Tap }\n    test points:\n      tap: { read: V, when: { V_in: 40 V } }\n`;
  const [point] = found(text).test_points;
  expect(point).toMatchObject({ id: 'x.tap', reads: 'x.V', unit: 'V', when: { V_in: { value: 40, unit: 'V' } } });
  expect(point!.expected).toBeCloseTo(2.5, 12);
  expect(point!.min).toBeCloseTo((40 * 9.9) / (151.5 + 9.9), 9);
  expect(point!.max).toBeCloseTo((40 * 10.1) / (148.5 + 10.1), 9);
  expect(point!.spread!.quantiles['0.99865']).toBeLessThan(point!.max);
});
