/** Bits behind the point: the largest double has 1024 before it, and 150 must be left when those cancel. */
const PLACES = 1200n;
const KEPT = 1000n;

let quarter: bigint | undefined;

/** π/2 with `PLACES` bits behind the point, by Machin's formula π/4 = 4·arctan(1/5) − arctan(1/239). */
function quarterTurn(): bigint {
  const guard = 32n;
  const arctan = (inverse: bigint): bigint => {
    let power = (1n << (PLACES + guard)) / inverse;
    let sum = power;
    for (let n = 3n; power !== 0n; n += 2n) {
      power = -power / (inverse * inverse);
      sum += power / n;
    }
    return sum;
  };
  quarter ??= (8n * arctan(5n) - 2n * arctan(239n)) >> guard;
  return quarter;
}

export interface ReducedAngle {
  /** Quarter turns taken away, modulo 4. */
  readonly quadrant: number;
  /** What is left, within ±π/4, as the unrounded sum of two doubles. */
  readonly high: number;
  readonly low: number;
}

/**
 * An angle less a whole number of quarter turns, exact for any double (whole numbers of any length do the work). The
 * SIMD code calls it for angles beyond 2²⁰ quarter turns only.
 * @example reducedAngle(1e22)  // { quadrant: 1, high: −0.5226…, low: … }: sin 1e22 = −0.8522…
 */
export function reducedAngle(x: number): ReducedAngle {
  if (!Number.isFinite(x)) return { quadrant: 0, high: Number.NaN, low: Number.NaN };
  if (Math.abs(x) < 0.5) return { quadrant: 0, high: x, low: 0 };
  const scaled = fixedPoint(x);
  const turn = quarterTurn();
  let turns = scaled / turn;
  let rest = scaled - turns * turn;
  const half = turn >> 1n;
  if (rest > half) [turns, rest] = [turns + 1n, rest - turn];
  if (rest < -half) [turns, rest] = [turns - 1n, rest + turn];
  const kept = rest >> (PLACES - KEPT);
  const high = Number(kept);
  const low = Number(kept - BigInt(high));
  return { quadrant: Number(((turns % 4n) + 4n) % 4n), high: high * 2 ** -Number(KEPT), low: low * 2 ** -Number(KEPT) };
}

/** x with `PLACES` bits behind the point, exactly. */
function fixedPoint(x: number): bigint {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  const word = view.getBigUint64(0);
  const exponent = (word >> 52n) & 0x7ffn;
  const mantissa = (word & 0xfffffffffffffn) | (exponent === 0n ? 0n : 1n << 52n);
  // A double is its mantissa times 2 to the power (exponent − 1075).
  const shift = PLACES - 1075n + (exponent === 0n ? 1n : exponent);
  const size = mantissa << shift;
  return x < 0 ? -size : size;
}
