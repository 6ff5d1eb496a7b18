import { type Code, callImported, type Term, when } from '../code.ts';
import { loadTwo } from '../memory.ts';
import type { ImportedFunction } from '../module.ts';
import { bits, doubleOf, f64x2, i64x2, integer, pattern, twice } from '../vectors.ts';
import { HALF_PI_PARTS, ROUNDER } from './constants.ts';
import { elementary } from './elementary.ts';
import { polynomial } from './polynomial.ts';

/** Beyond these many radians whoever started the module takes the turns away. */
const FAR = 1.6e6;

/** (sin r − r)/r³ in powers of r², |r| ≤ π/4: minimax by the Remez exchange at 60 digits, 2⁻⁵⁸ of sin r. */
const SINE = [
  -0.16666666666666632, 0.008333333333322413, -0.00019841269829807802, 2.7557313691891292e-6, -2.505075810880838e-8,
  1.5896795190537075e-10,
];
/** (cos r − 1 + r²/2)/r⁴ in the same way, 2⁻⁶⁴. */
const COSINE = [
  0.0416666666666666, -0.0013888888888874125, 2.4801587289482272e-5, -2.755731435235087e-7, 2.0875723274654536e-9,
  -1.1359647827745044e-11,
];

/**
 * Takes the quarter turns from an angle beyond 1.6e6, exactly. Writes what is left to memory at the address, as two
 * doubles, then the quadrant as a whole number of 64 bits.
 */
export const farAngle: ImportedFunction = { name: 'farAngle', parameters: ['f64', 'i32'] };

interface Reduced {
  /** Quarter turns, of which the last two bits count. */
  readonly quadrant: Term;
  readonly r: Term;
  readonly low: Term;
}

function reduced(code: Code, x: Term): Reduced {
  const shifted = code.let(f64x2.add(f64x2.mul(x, twice(2 / Math.PI)), twice(ROUNDER)));
  const n = code.let(f64x2.sub(shifted, twice(ROUNDER)));
  const quadrant = code.variable(i64x2.sub(shifted, twice(ROUNDER)));
  // Each part is taken away exactly or its rounding is kept: what is left is right even next to a multiple of π/2.
  const first = code.let(f64x2.sub(x, f64x2.mul(n, twice(HALF_PI_PARTS[0]))));
  const second = minus(code, first, f64x2.mul(n, twice(HALF_PI_PARTS[1])));
  const third = minus(code, second.high, f64x2.mul(n, twice(HALF_PI_PARTS[2])));
  const rest = f64x2.sub(f64x2.add(second.low, third.low), f64x2.mul(n, twice(HALF_PI_PARTS[3])));
  const sum = minus(code, third.high, f64x2.neg(rest));
  const [r, low] = [code.variable(sum.high), code.variable(sum.low)];
  const near = f64x2.lt(f64x2.abs(x), twice(FAR));
  code.do(
    when(bits.any(bits.not(near)), () => {
      const place = code.module.reserve(64 * code.passes);
      const call = callImported(farAngle.name);
      code.each(() => {
        for (const lane of [0, 1]) call(doubleOf(x, lane), integer(place + 64 * code.pass + 32 * lane))(code);
      });
      const both =
        (offset: number): Term =>
        (code) =>
          loadTwo(place + 64 * code.pass + offset, place + 64 * code.pass + 32 + offset)(code);
      code.do(r.set(both(0)), low.set(both(8)), quadrant.set(both(16)));
    }),
  );
  return { quadrant: quadrant.get, r: r.get, low: low.get };
}

/**
 * a − b and what rounding took from it, whichever is larger (Knuth, The Art of Computer Programming 2, 4.2.2, theorem
 * B).
 */
function minus(code: Code, a: Term, b: Term): { high: Term; low: Term } {
  const taken = code.let(b);
  const high = code.let(f64x2.sub(a, taken));
  const part = code.let(f64x2.sub(high, a));
  return { high, low: code.let(f64x2.sub(f64x2.sub(a, f64x2.sub(high, part)), f64x2.add(part, taken))) };
}

interface Both {
  readonly sine: Term;
  readonly cosine: Term;
}

/** Sine and cosine of r + low within an eighth of a turn. */
function within(code: Code, { r, low }: Reduced): Both {
  const square = code.let(f64x2.mul(r, r));
  const half = code.let(f64x2.mul(twice(0.5), square));
  const cube = f64x2.mul(f64x2.mul(square, r), polynomial(square, SINE));
  const sine = f64x2.add(r, f64x2.add(cube, f64x2.mul(low, f64x2.sub(twice(1), half))));
  const flat = code.let(f64x2.sub(twice(1), half));
  const lost = f64x2.sub(f64x2.sub(twice(1), flat), half);
  const fourth = f64x2.mul(f64x2.mul(square, square), polynomial(square, COSINE));
  const cosine = f64x2.add(flat, f64x2.add(lost, f64x2.sub(fourth, f64x2.mul(r, low))));
  return { sine: code.let(sine), cosine: code.let(cosine) };
}

/** All ones where a bit of the quadrant is set. */
const bitSet = (quadrant: Term, bit: number): Term =>
  i64x2.sub(pattern(0), i64x2.shrU(i64x2.shl(quadrant, integer(63 - bit)), integer(63)));

/** The sign bit where bit 1 of the quadrant is set. */
const signOf = (quadrant: Term): Term => bits.and(i64x2.shl(quadrant, integer(62)), pattern(0x80000000));

/** Sine, within 1 unit in the last place, of an angle of any size in radians. */
export const sin = elementary(1, (code, x) => {
  const angle = reduced(code, x);
  const { sine, cosine } = within(code, angle);
  return bits.xor(bits.select(cosine, sine, bitSet(angle.quadrant, 0)), signOf(angle.quadrant));
});

/** Cosine, within 1 unit in the last place. */
export const cos = elementary(1, (code, x) => {
  const angle = reduced(code, x);
  const { sine, cosine } = within(code, angle);
  const next = code.let(i64x2.add(angle.quadrant, pattern(0, 1)));
  return bits.xor(bits.select(sine, cosine, bitSet(angle.quadrant, 0)), signOf(next));
});

/** Tangent, within 2.5 units in the last place. */
export const tan = elementary(1, (code, x) => {
  const angle = reduced(code, x);
  const { sine, cosine } = within(code, angle);
  const odd = code.let(bitSet(angle.quadrant, 0));
  const above = bits.xor(bits.select(cosine, sine, odd), bits.and(odd, pattern(0x80000000)));
  return f64x2.div(above, bits.select(sine, cosine, odd));
});
