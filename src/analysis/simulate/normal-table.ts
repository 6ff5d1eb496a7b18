import { normalQuantile } from '../statistics.ts';

/** Parts of the table for each doubling of the chance. */
export const partsPerDoubling = 64;
const doublings = 32;
const parts = partsPerDoubling * doublings;

/**
 * A table of the normal quantile for chances from 2⁻³³ to ½, part by part: the cubic that has the value and the slope
 * of the quantile at both ends (Hermite), as four coefficients from the constant up, of 1 and how far the chance's
 * mantissa is past the part's start: a double from 1 to 1 + 1/64 that needs only a few bits put in. Within 4e−10 of the
 * quantile, continuous and falling.
 */
export const normalTable: Float64Array<ArrayBuffer> = build();

function build(): Float64Array<ArrayBuffer> {
  const table = new Float64Array(4 * parts);
  const width = 1 / partsPerDoubling;
  let [z, slope] = [0, 0];
  for (let part = parts - 1, end = true; part >= 0; part--, end = false) {
    const unit = 2 ** (Math.floor(part / partsPerDoubling) - 33);
    if (end) [z, slope] = [0, -1 / density(0)];
    const [nextZ, nextSlope] = [z, slope];
    z = -normalQuantile(unit * (1 + (part % partsPerDoubling) * width), lnSeries);
    slope = -1 / density(z);
    const rise = nextZ - z;
    const [s0, s1] = [slope * unit * width, nextSlope * unit * width];
    const [a, b, c] = [s0 / width, (3 * rise - 2 * s0 - s1) / width ** 2, (s0 + s1 - 2 * rise) / width ** 3];
    // z + a·t + b·t² + c·t³ in powers of m = 1 + t
    table.set([z - a + b - c, a - 2 * b + 3 * c, b - 3 * c, c], 4 * part);
  }
  return table;
}

function density(z: number): number {
  return expSeries((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/**
 * Logarithm and exponential by their series, from arithmetic alone: `Math.log` and `Math.exp` may differ in the last
 * bit from one machine to the next, and the draws must not.
 */
function lnSeries(x: number): number {
  let [m, k] = [x, 0];
  for (; m < 0.75; m *= 2) k--;
  const s = (m - 1) / (m + 1);
  let sum = 0;
  for (let n = 25; n > 0; n -= 2) sum = sum * s * s + 1 / n;
  return 2 * s * sum + k * Math.LN2;
}

function expSeries(x: number): number {
  let power = 1;
  for (let n = 15; n > 0; n--) power = 1 + (power * x) / 64 / n;
  for (let i = 0; i < 6; i++) power *= power;
  return power;
}

const bits = new DataView(new ArrayBuffer(8));
/** Parts from the least double to 2⁻³³. */
const firstPart = (1023 - 33) * partsPerDoubling;

/** How far above 0 a standard normal number lies that is exceeded with chance p, 2⁻³³ ≤ p < ½. */
export function upperDeviate(p: number): number {
  bits.setFloat64(0, p);
  const upper = bits.getUint32(0);
  const at = 4 * ((upper >>> 14) - firstPart);
  bits.setUint32(0, (upper & 0x3fff) | 0x3ff00000);
  const m = bits.getFloat64(0);
  const table = normalTable;
  return ((table[at + 3]! * m + table[at + 2]!) * m + table[at + 1]!) * m + table[at]!;
}
