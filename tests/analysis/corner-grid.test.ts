import { expect, test } from 'vitest';
import { found } from './found.ts';

const spec = (more = '') => `
conditions:
  u: 1 V to 3 V typ 2 V
  T: 0 degC to 40 degC typ 25 degC
  s: 1 to 1.02 typ 1.01
${more}
circuits:
  x:
    given: { U: u, R: 1 kohm ±10 %, V_max: 4 V, T_max: 100 degC, k: s }
    equations:
      V: { is: "U * (1 + (T - 0 degC) / (400 K))", unit: V, says: test }
      T_j: { is: T + 30 K, unit: degC, says: test }
      w: { is: k * 1 V, unit: V, says: test }
    checks:
      volts: { holds: V <= V_max, because: test }
      hot: { holds: T_j <= T_max, because: test }
      still: { holds: w <= 2 V, because: test }
`;

test('the two conditions that move the margins most are held low, typical and high', () => {
  const { corners } = found(spec());
  expect(corners).toMatchObject({
    rows: { condition: 'u', unit: 'V' },
    columns: { condition: 'T', unit: '°C' },
    checks: 2,
    others: 1,
    thinnest_other: 'x.still',
  });
  expect(corners!.rows.levels.map(({ value }) => value)).toEqual([1, 2, 3]);
  expect(corners!.columns!.levels.map(({ value }) => Math.round(value))).toEqual([0, 25, 40]);
});

test('each cell holds the thinnest margin there, by hand', () => {
  const { cells } = found(spec()).corners!;
  [1, 2, 3].forEach((u, i) => {
    [0, 25, 40].forEach((T, j) => {
      const volts = (4 - u * (1 + T / 400)) / 4;
      const hot = (70 - T) / 100;
      expect(cells[i]![j]!.margin).toBeCloseTo(Math.min(volts, hot), 9);
      expect(cells[i]![j]!.check).toBe(volts < hot ? 'x.volts' : 'x.hot');
    });
  });
  expect(cells[2]![2]).toMatchObject({ verdict: 'pass' });
});

test('a corner that no operating case asks for is empty', () => {
  const cases =
    'cases: { cold: { u: 1 V to 2 V typ 1.5 V, T: 0 degC to 25 degC typ 10 degC }, warm: { u: 2 V to 3 V typ 2.5 V, T: 25 degC to 40 degC typ 30 degC } }';
  const { cells } = found(spec(cases)).corners!;
  expect(cells.map((row) => row.map((cell) => cell !== null))).toEqual([
    [true, true, false],
    [true, true, true],
    [false, true, true],
  ]);
});

test('one condition makes a row, none makes no grid', () => {
  const one = found(`
conditions:
  u: 1 V to 3 V typ 2 V
circuits:
  x:
    given: { U: u }
    equations: { V: { is: 2 * U, unit: V, says: test } }
    checks: { volts: { holds: V <= 10 V, because: test } }
`).corners!;
  expect(one.columns).toBeNull();
  expect(one.cells.map(([cell]) => cell!.margin)).toEqual([0.8, 0.6, 0.4]);
  const none = found(
    'circuits: { x: { given: { R: 1 ohm ±1 % }, equations: { y: { is: 2 * R, unit: ohm, says: test } }, checks: { c: { holds: y <= 3 ohm, because: test } } } }',
  );
  expect(none.corners).toBeNull();
});
