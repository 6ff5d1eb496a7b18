import { describe, expect, test } from 'vitest';
import { undefinedResults } from '../../src/analysis/undefined-results.ts';
import { boardFrom } from '../spec/spec-text.ts';
import { circuit, found } from './found.ts';

const worstOf = (given: Record<string, string>, is: string, unit = '1') =>
  found(circuit(given, { y: [is, unit] })).results['x.y']!.worst;

describe('an extreme inside the ranges is found and proven', () => {
  test('power into a load is greatest where it equals the source: V²/(4·R_S) (maximum power transfer)', () => {
    const { worst, rss } = found(
      circuit(
        { V: '10 V', R_S: '50 ohm', R_L: '40 ohm to 60 ohm typ 45 ohm' },
        { y: ['V^2 * R_L / (R_S + R_L)^2', 'W'] },
      ),
    ).results['x.y']!;
    expect(worst.max).toBeCloseTo(0.5, 6);
    expect(worst.min).toBeCloseTo(0.49382716049382713, 12);
    expect(worst).toMatchObject({ proven: true });
    expect(rss.min).toBe(rss.max);
  });
  test('ripple current of a bridge capacitor peaks at 0.650 of the phase current inside the modulation range', () => {
    // J. W. Kolar, S. D. Round, IEE Proc. Electr. Power Appl. 153 (2006) 535–543: I_C = I·√(2M(√3/(4π) + cos²φ(√3/π − 9M/16)))
    const {
      max,
      at_max: at,
      proven,
    } = worstOf(
      { M: '0 to 1.15 typ 0.8', c: '0.5 to 1 typ 0.9' },
      'sqrt(2 * M * (sqrt(3) / (4 * pi) + c^2 * (sqrt(3) / pi - 9 * M / 16)))',
    );
    expect(max).toBeCloseTo(0.65, 3);
    expect(at['x.M']).toBeCloseTo(0.6126, 2);
    expect(at['x.c']).toBe(1);
    expect(proven).toBe(true);
  });
  test('input capacitor current of a step-down peaks at half duty: I/2', () => {
    const { max, at_max: at } = worstOf(
      { I: '3 A', V_in: '5.5 V to 30 V typ 12 V' },
      'I * sqrt(5 V / V_in * (1 - 5 V / V_in))',
      'A',
    );
    expect(max).toBeCloseTo(1.5, 6);
    expect(at['x.V_in']).toBeCloseTo(10, 1);
  });
  test.each([
    ['abs(a - 1)', 0, 2],
    ['max(a, 2 - a)', 1, 3],
    ['min(a, 2 - a)', -1, 1],
    ['if(a > 1, 2 - a, a)', -1, 1],
    ['interp(a, -1, 0, 1, 5, 3, 1)', 0, 5],
    ['a^3 - 3 * a', -2, 18],
  ])('%s over −1 … 3 lies in %d … %d', (is, min, max) => {
    const worst = worstOf({ a: '-1 to 3 typ 0' }, is);
    expect(worst.min).toBeCloseTo(min, 5);
    expect(worst.max).toBeCloseTo(max, 5);
    expect(worst.min_bound).toBeLessThanOrEqual(worst.min);
    expect(worst.max_bound).toBeGreaterThanOrEqual(worst.max);
    expect(worst.proven).toBe(true);
  });
  test('two variables that must move together', () => {
    const worst = worstOf({ a: '-1 to 1 typ 0.5', b: '-1 to 1 typ 0.5' }, '1 - (a - b)^2 - 0.01 * (a + b - 0.4)^2');
    expect(worst.max).toBeCloseTo(1, 5);
  });
});

describe('a divisor that can be zero is refused with the inputs that let it', () => {
  const undefinedIn = (given: Record<string, string>, is: string) =>
    undefinedResults(boardFrom(circuit(given, { y: [is, '1'] })));
  test.each([
    'if(a > 0.1, b / a, 0)',
    'if(a <= 0.1, 0, b / a)',
    'if(a < -0.1, b / a, if(a > 0.1, b / a, 0))',
    'if(a > 0, b / a, 0)',
    'if(abs(a) > 0.1, b / a, b)',
    'if(2 > 1, b, b / a)',
  ])('not where its branch is not taken: %s', (is) => {
    expect(undefinedIn({ a: '-1 to 1 typ 0.5', b: '2' }, is)).toEqual([]);
  });
  test.each(['if(a > -0.1, b / a, 0)', 'if(a <= 0.1, b / a, 0)', 'if(b > 1, b / a, 0)', 'if(a >= 0, b / a, 0)'])(
    'but where it is: %s',
    (is) => {
      expect(undefinedIn({ a: '-1 to 1 typ 0.5', b: '2' }, is)).toMatchObject([{ code: 'zero-divisor' }]);
    },
  );
  test('named with its range', () => {
    expect(undefinedIn({ a: '-1 to 1 typ 0.5', b: '2' }, 'b / a')).toEqual([
      {
        id: 'x.y',
        code: 'zero-divisor',
        found: 'a division by something that can be zero in `x.y`',
        expected: 'a divisor that stays on one side of zero',
        hint: 'What lets it: `x.a` (-1 to 1). Narrow the range, or write the equation another way.',
      },
    ]);
  });
  test('also where it cancels', () => expect(undefinedIn({ a: '-1 to 1 typ 0.5' }, 'a / a')).toHaveLength(1));
  test('not where the ranges only seem to allow it', () =>
    expect(undefinedIn({ a: '-1 to 1 typ 0.5' }, '1 / (a^2 - a + 1)')).toEqual([]));
  test('a value that is no number at typical', () =>
    expect(undefinedIn({ a: '-2' }, 'sqrt(a)')).toMatchObject([{ code: 'no-value' }]));
});

test('a curve that is left does not decide a check', () => {
  const findings = found(circuit({ T: '0 to 10 typ 5' }, { k: ['interp(T, 0, 1, 8, 2)', '1'] }, { low: 'k <= 3' }));
  expect(findings.checks[0]).toMatchObject({
    verdict: 'not assessed',
    worst_slack: null,
    reason: expect.stringContaining('leaves the range of its data'),
  });
  expect(findings).toMatchObject({ verdict: 'not assessed', yield: null });
});

test('a curve that is left decides nothing, also where the worst corner lies on it', () => {
  const findings = found(circuit({ a: '1 to 3 typ 2' }, { y: ['interp(a, 1, 10, 2, 20)', '1'] }, { some: 'y >= 5' }));
  expect(findings.checks[0]).toMatchObject({ verdict: 'not assessed' });
});

test('a curve may be used to its very end', () => {
  const text = `conditions: { T_amb: -10 degC to 45 degC typ 25 degC }\n${circuit({ dT: '15 K' }, { k: ['interp(T_amb + dT, -10 degC, 1, 60 degC, 2)', '1'] }, { most: 'k <= 3' })}`;
  expect(found(text).checks[0]).toMatchObject({ verdict: 'pass', proven: true });
});
