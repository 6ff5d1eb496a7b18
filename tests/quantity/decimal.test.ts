import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decimalOf, minus, plus, quotient, times, toNumber } from '../../src/quantity/decimal.ts';

const double = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e100, max: 1e100 });

test.each([
  ['0.1', 1n, -1],
  ['-12.50', -1250n, -2],
  ['4.7e-6', 47n, -7],
  ['1e21', 1n, 21],
  [0.000001, 1n, -6],
  [1e-7, 1n, -7],
])('%s', (text, digits, exponent) => expect(decimalOf(text)).toEqual({ digits, exponent }));

test('a double and its decimal are one number', () => {
  fc.assert(
    fc.property(double, (x) => {
      expect(toNumber(decimalOf(x)) + 0).toBe(x + 0);
    }),
  );
});

test('sums, differences and products are exact', () => {
  const decimal = fc.record({
    digits: fc.bigInt(-(10n ** 20n), 10n ** 20n),
    exponent: fc.integer({ min: -9, max: 9 }),
  });
  const whole = ({ digits, exponent }: { digits: bigint; exponent: number }) => digits * 10n ** BigInt(exponent + 18);
  fc.assert(
    fc.property(decimal, decimal, (a, b) => {
      expect(whole(plus(a, b))).toBe(whole(a) + whole(b));
      expect(whole(minus(a, b))).toBe(whole(a) - whole(b));
      expect(times(a, b).digits * 10n ** BigInt(times(a, b).exponent + 36)).toBe(whole(a) * whole(b));
    }),
  );
});

test.each([
  [2, 3, 3, 'nearest', 667n, -3],
  [2, 3, 3, 'up', 667n, -3],
  [2, 3, 3, 'down', 666n, -3],
  [-2, 3, 3, 'up', -666n, -3],
  [-2, 3, 3, 'down', -667n, -3],
  [25, 1, 1, 'nearest', 3n, 1],
  [-25, 1, 1, 'nearest', -3n, 1],
  [99.96, 1, 3, 'nearest', 100n, 0],
  [1, 1, 5, 'up', 10000n, -4],
  [0, 7, 5, 'up', 0n, 0],
] as const)('%d ÷ %d to %d digits, %s', (a, b, digits, rounding, result, exponent) =>
  expect(quotient(decimalOf(a), decimalOf(b), digits, rounding)).toEqual({ digits: result, exponent }),
);

test('a quotient has the digits asked for and lies on the side asked for', () => {
  const size = fc.bigInt(1n, 10n ** 30n);
  fc.assert(
    fc.property(size, size, fc.boolean(), fc.integer({ min: 1, max: 25 }), (a, b, below, digits) => {
      const dividend = { digits: below ? -a : a, exponent: 0 };
      const divisor = { digits: b, exponent: 0 };
      const up = quotient(dividend, divisor, digits, 'up');
      const down = quotient(dividend, divisor, digits, 'down');
      const nearest = quotient(dividend, divisor, digits, 'nearest');
      expect(minus(times(up, divisor), dividend).digits).toBeGreaterThanOrEqual(0n);
      expect(minus(dividend, times(down, divisor)).digits).toBeGreaterThanOrEqual(0n);
      expect([up, down]).toContainEqual(nearest);
      for (const { digits: kept } of [up, down]) expect(kept.toString().replace('-', '')).toHaveLength(digits);
    }),
  );
});
