import { expect, test } from 'vitest';
import { found } from './found.ts';

const { assumptions, checks } = found(`
circuits:
  feed:
    given: { k: { is: 2, basis: assumed } }
    equations:
      I: { is: k * 1 A, unit: A, says: Current }
  x:
    given:
      I_in: feed.I
      R: { is: 10 ohm ±20 %, basis: typical }
      n: { is: 4 A, basis: assumed }
      P_max: 60 W
      idle: { is: 3, basis: assumed }
    equations:
      P: { is: I_in^2 * R, unit: W, says: Heat }
    checks:
      hot: { holds: P <= P_max, because: test }
      far: { holds: I_in <= 10 * n, because: test }
`);
const of = (symbol: string) => assumptions.find((one) => one.symbol === symbol)!;

test('costs follow from the equations at the worst corner, by half the stated range or by a tenth', () => {
  // hot: 60 W − 2²·12 Ω leaves 12 W, 20 % of the limit; k 10 % higher adds 48 W·0.21.
  expect(of('feed.k').effect).toMatchObject({ check: 'x.hot', off: 0.1, stated: false });
  expect(of('feed.k').effect!.margin).toBeCloseTo((48 * 0.21) / 60, 9);
  // R stands at 12 Ω in the corner; a fifth more adds 48 W·0.2.
  expect(of('x.R').effect).toMatchObject({ check: 'x.hot', stated: true });
  expect(of('x.R').effect!.off).toBeCloseTo(0.2, 12);
  expect(of('x.R').effect!.margin).toBeCloseTo((48 * 0.2) / 60, 9);
  // far: 40 A − 2 A; n a tenth lower loses 4 A.
  expect(of('x.n').effect).toMatchObject({ check: 'x.far' });
  expect(of('x.n').effect!.margin).toBeCloseTo(4 / 40, 9);
});

test('what may cost the largest part of a margin stands first, what costs nothing last', () => {
  expect(checks.find(({ id }) => id === 'x.hot')!.margin).toBeCloseTo(0.2, 9);
  expect(assumptions.map(({ symbol }) => symbol)).toEqual(['feed.k', 'x.R', 'x.n', 'x.idle']);
  expect(of('x.idle').effect).toBeNull();
});
