/**
 * Arithmetic rounded in a stated direction: `…Down` never exceeds the exact result, `…Up` never falls short of it.
 * Doubles round to nearest, so a result that fell short is moved one unit in the last place outward.
 *
 * Source for the step: Rump, Zimmermann, Boldo, Melquiond, Computing predecessor and successor in rounding to nearest,
 * BIT 49 (2009), algorithm 1: c + (φ|c| + η) with φ = u(1 + 2u), u = 2⁻⁵³, reaches the next double or the one after.
 * Source for the exact error of a sum: Knuth, The Art of Computer Programming, vol. 2, section 4.2.2, theorem B; of a
 * product: Dekker, A floating-point technique for extending the available precision, Numer. Math. 18 (1971), section 5.
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
  if (sumError(a, b, sum) <= 0) return sum;
  return Number.isFinite(a) && Number.isFinite(b) ? up(sum) : sum;
}

export function addDown(a: number, b: number): number {
  const sum = a + b;
  if (sumError(a, b, sum) >= 0) return sum;
  return Number.isFinite(a) && Number.isFinite(b) ? down(sum) : sum;
}

const SPLIT = 2 ** 27 + 1;
/** Within these bounds what rounding takes from a product is itself a double. */
const LEAST = 1e-280;
const MOST = 1e280;

/** What rounding took from `a × b = product`; NaN where sizes do not let it be told. */
function productError(a: number, b: number, product: number): number {
  const [sizeA, sizeB, size] = [Math.abs(a), Math.abs(b), Math.abs(product)];
  if (!(size > LEAST && size < MOST && sizeA < MOST && sizeB < MOST)) return Number.NaN;
  const wideA = SPLIT * a;
  const highA = wideA - (wideA - a);
  const lowA = a - highA;
  const wideB = SPLIT * b;
  const highB = wideB - (wideB - b);
  const lowB = b - highB;
  return lowA * lowB - (product - highA * highB - lowA * highB - highA * lowB);
}

/**
 * `a × b`, exact products left as they are. 0 × ∞ is 0: an infinite end of a range is not itself a value of it
 * (IEEE 1788-2015, 10.5.3).
 */
export function multiplyUp(a: number, b: number): number {
  if (a === 0 || b === 0) return 0;
  const product = a * b;
  if (productError(a, b, product) <= 0) return product;
  return product === 0 && a < 0 !== b < 0 ? 0 : outwardUp(product, a, b);
}

export function multiplyDown(a: number, b: number): number {
  if (a === 0 || b === 0) return 0;
  const product = a * b;
  if (productError(a, b, product) >= 0) return product;
  return product === 0 && a < 0 === b < 0 ? 0 : outwardDown(product, a, b);
}

/** `a ÷ b` for `b ≠ 0`, exact quotients left as they are; ∞ ÷ ∞ is not asked for. */
export function divideUp(a: number, b: number): number {
  if (a === 0) return 0;
  const quotient = a / b;
  if (quotientError(a, b, quotient) <= 0) return quotient;
  return quotient === 0 && a < 0 !== b < 0 ? 0 : outwardUp(quotient, a, b);
}

export function divideDown(a: number, b: number): number {
  if (a === 0) return 0;
  const quotient = a / b;
  if (quotientError(a, b, quotient) >= 0) return quotient;
  return quotient === 0 && a < 0 === b < 0 ? 0 : outwardDown(quotient, a, b);
}

/** Has the sign of what rounding took from `a ÷ b = quotient`, and is 0 where it took nothing. */
function quotientError(a: number, b: number, quotient: number): number {
  const product = quotient * b;
  const rest = a - product - productError(quotient, b, product);
  return b < 0 ? -rest : rest;
}

/** Square root of `x ≥ 0`, exact roots left as they are. */
export function sqrtUp(x: number): number {
  const root = Math.sqrt(x);
  const square = root * root;
  return x === 0 || x - square - productError(root, root, square) <= 0 ? root : up(root);
}

export function sqrtDown(x: number): number {
  const root = Math.sqrt(x);
  const square = root * root;
  return x === 0 || x - square - productError(root, root, square) >= 0 ? root : down(root);
}

// An infinity that came from an infinite end is exact; one that came from overflow is not.
function outwardUp(result: number, a: number, b: number): number {
  return result === -Infinity && !(Number.isFinite(a) && Number.isFinite(b)) ? result : up(result);
}

function outwardDown(result: number, a: number, b: number): number {
  return result === Infinity && !(Number.isFinite(a) && Number.isFinite(b)) ? result : down(result);
}
