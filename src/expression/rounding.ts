/**
 * Arithmetic rounded in a stated direction: `…Down` never exceeds the exact result, `…Up` never falls short of it.
 * Doubles round to nearest, so a result that may be inexact is moved one unit in the last place outward.
 *
 * Source for the step: Rump, Zimmermann, Boldo, Melquiond, Computing predecessor and successor in rounding to nearest,
 * BIT 49 (2009), algorithm 1: c + (φ|c| + η) with φ = u(1 + 2u), u = 2⁻⁵³, reaches the next double or the one after.
 * Source for the exact error of a sum: Knuth, The Art of Computer Programming, vol. 2, section 4.2.2, theorem B.
 */
const PHI = 2 ** -53 * (1 + 2 ** -52);
const ETA = Number.MIN_VALUE;
const MAX = Number.MAX_VALUE;

/** A double above `x` (not below it where `x` is +∞). −∞ stands for a result too low to write, so it gives −MAX. */
export function up(x: number): number {
  return x === -Infinity ? -MAX : x + (Math.abs(x) * PHI + ETA);
}

/** A double below `x` (not above it where `x` is −∞). */
export function down(x: number): number {
  return x === Infinity ? MAX : x - (Math.abs(x) * PHI + ETA);
}

/** Steps outward that cover `Math.exp`, `Math.pow` and their like, which the platform gives to within an ulp or two. */
const LIBRARY_STEP = 4 * 2 ** -52;

/** Above the exact value of a library function that gave `x`: four units in the last place. */
export function libraryUp(x: number): number {
  return x === -Infinity ? -MAX : x + (Math.abs(x) * LIBRARY_STEP + ETA);
}

export function libraryDown(x: number): number {
  return x === Infinity ? MAX : x - (Math.abs(x) * LIBRARY_STEP + ETA);
}

/** What rounding took from `a + b = sum`; NaN where the sum overflowed or an end is infinite. */
function sumError(a: number, b: number, sum: number): number {
  const part = sum - a;
  return a - (sum - part) + (b - part);
}

/** `a + b`, exact sums left as they are. The ends must not be opposite infinities. */
export function addUp(a: number, b: number): number {
  const sum = a + b;
  const error = sumError(a, b, sum);
  if (error <= 0) return sum;
  return Number.isFinite(a) && Number.isFinite(b) ? up(sum) : sum;
}

export function addDown(a: number, b: number): number {
  const sum = a + b;
  const error = sumError(a, b, sum);
  if (error >= 0) return sum;
  return Number.isFinite(a) && Number.isFinite(b) ? down(sum) : sum;
}

/** `a × b`, where 0 × ∞ is 0: an infinite end of a range is not itself a value of it (IEEE 1788-2015, 10.5.3). */
export function multiplyUp(a: number, b: number): number {
  if (a === 0 || b === 0) return 0;
  if (a === 1) return b;
  if (b === 1) return a;
  const product = a * b;
  return product === 0 && a < 0 !== b < 0 ? 0 : outwardUp(product, a, b);
}

export function multiplyDown(a: number, b: number): number {
  if (a === 0 || b === 0) return 0;
  if (a === 1) return b;
  if (b === 1) return a;
  const product = a * b;
  return product === 0 && a < 0 === b < 0 ? 0 : outwardDown(product, a, b);
}

/** `a ÷ b` for `b ≠ 0`; ∞ ÷ ∞ is not asked for. */
export function divideUp(a: number, b: number): number {
  if (a === 0 || b === 1) return a;
  const quotient = a / b;
  return quotient === 0 && a < 0 !== b < 0 ? 0 : outwardUp(quotient, a, b);
}

export function divideDown(a: number, b: number): number {
  if (a === 0 || b === 1) return a;
  const quotient = a / b;
  return quotient === 0 && a < 0 === b < 0 ? 0 : outwardDown(quotient, a, b);
}

// An infinity that came from an infinite end is exact; one that came from overflow is not.
function outwardUp(result: number, a: number, b: number): number {
  return result === -Infinity && !(Number.isFinite(a) && Number.isFinite(b)) ? result : up(result);
}

function outwardDown(result: number, a: number, b: number): number {
  return result === Infinity && !(Number.isFinite(a) && Number.isFinite(b)) ? result : down(result);
}
