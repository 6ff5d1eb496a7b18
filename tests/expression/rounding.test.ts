import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as rounding from '../../src/expression/rounding.ts';

/** A double as the exact fraction that it is, over 2^1074. */
function exact(x: number): bigint {
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, x);
  const high = bits.getUint32(0);
  const exponent = (high >>> 20) & 0x7ff;
  const fraction = (BigInt(high & 0xfffff) << 32n) | BigInt(bits.getUint32(4));
  const whole = exponent === 0 ? fraction : (fraction | (1n << 52n)) << BigInt(exponent - 1);
  return x < 0 ? -whole : whole;
}

const ONE = 1n << 1074n;
const finite = fc.double({ noNaN: true, noDefaultInfinity: true });
const below = (bound: number, value: bigint): boolean =>
  bound === -Infinity || (bound < Infinity && exact(bound) <= value);
const above = (bound: number, value: bigint): boolean =>
  bound === Infinity || (bound > -Infinity && exact(bound) >= value);

describe('rounding outward', () => {
  test('the next double is reached, and the one after it is not passed', () => {
    fc.assert(
      fc.property(finite, (x) => {
        expect(rounding.up(x)).toBeGreaterThan(x === Number.MAX_VALUE ? 0 : x);
        expect(rounding.down(x) === -rounding.up(-x)).toBe(true);
        const steps = exact(Math.min(rounding.up(x), Number.MAX_VALUE)) - exact(x);
        const ulp = exact(Math.abs(x)) >> 52n || 1n;
        expect(steps <= 2n * ulp + 2n).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  test('a sum lies between its two roundings, and an exact sum is left as it is', () => {
    fc.assert(
      fc.property(finite, finite, (a, b) => {
        const sum = exact(a) + exact(b);
        expect(below(rounding.addDown(a, b), sum) && above(rounding.addUp(a, b), sum)).toBe(true);
      }),
      { numRuns: 3000 },
    );
    expect(rounding.addUp(0.5, 0.25)).toBe(0.75);
    expect(rounding.addDown(3, -3)).toBe(0);
  });

  test('a product lies between its two roundings', () => {
    fc.assert(
      fc.property(finite, finite, (a, b) => {
        const product = exact(a) * exact(b);
        const scaled = (bound: number): bigint => exact(bound) * ONE;
        const down = rounding.multiplyDown(a, b);
        const up = rounding.multiplyUp(a, b);
        expect(down === -Infinity || scaled(down) <= product).toBe(true);
        expect(up === Infinity || scaled(up) >= product).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  test('a quotient lies between its two roundings', () => {
    fc.assert(
      fc.property(
        finite,
        finite.filter((b) => b !== 0),
        (a, b) => {
          // a/b against a bound is a against bound·b, turned where b is negative.
          const dividend = exact(a) * ONE * (b < 0 ? -1n : 1n);
          const scaled = (bound: number): bigint => exact(bound) * exact(Math.abs(b));
          const down = rounding.divideDown(a, b);
          const up = rounding.divideUp(a, b);
          expect(down === -Infinity || scaled(down) <= dividend).toBe(true);
          expect(up === Infinity || scaled(up) >= dividend).toBe(true);
        },
      ),
      { numRuns: 3000 },
    );
  });

  test('a root lies between its two roundings', () => {
    fc.assert(
      fc.property(finite.map(Math.abs), (x) => {
        const square = exact(x) * ONE;
        expect(exact(rounding.sqrtDown(x)) ** 2n <= square && exact(rounding.sqrtUp(x)) ** 2n >= square).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  test('what is exact is left as it is', () => {
    const small = fc.integer({ min: -1e6, max: 1e6 });
    fc.assert(
      fc.property(
        small,
        small.filter((b) => b !== 0),
        (a, b) => {
          expect([rounding.multiplyDown(a, b), rounding.multiplyUp(a, b)]).toEqual([a * b + 0, a * b + 0]);
          expect([rounding.divideDown(a * b, b), rounding.divideUp(a * b, b)]).toEqual([a + 0, a + 0]);
          expect([rounding.sqrtDown(a * a), rounding.sqrtUp(a * a)]).toEqual([Math.abs(a), Math.abs(a)]);
        },
      ),
    );
  });

  test('overflow leaves the bound that still holds', () => {
    expect(rounding.addDown(Number.MAX_VALUE, Number.MAX_VALUE)).toBe(Number.MAX_VALUE);
    expect(rounding.multiplyUp(-1e200, 1e200)).toBe(-Number.MAX_VALUE);
    expect(rounding.multiplyUp(0, Infinity)).toBe(0);
  });
});
