import { all, type BigNumber as Big, create } from 'mathjs';

/** Sixty-four digits: the reference that doubles are measured against. */
const big = create(all!, { number: 'BigNumber', precision: 64 });

export type { Big };

/** Enough digits to take whole turns from an angle as large as 1e300. */
const wide = create(all!, { number: 'BigNumber', precision: 400 });

/** A double's own value: `bignumber(x)` alone would take its shortest decimal, which is another number. */
function bigOf(math: typeof big, x: number): Big {
  const exponent = x === 0 ? 0 : Math.max(-1074, Math.floor(Math.log2(Math.abs(x))) - 53);
  const half = Math.trunc(exponent / 2);
  const mantissa = x / 2 ** half / 2 ** (exponent - half);
  const upper = Math.trunc(mantissa / 2 ** 27);
  const whole = math
    .bignumber(upper)
    .times(2 ** 27)
    .plus(mantissa - upper * 2 ** 27);
  return whole.times(math.bignumber(2).pow(exponent));
}

/** The angle less whole turns. */
function turned(x: number): Big {
  const angle = bigOf(wide, x);
  const turn = wide.bignumber(-1).acos().times(2);
  const rest = angle.minus(angle.div(turn).round().times(turn));
  return big.bignumber(rest.toPrecision(100));
}

/** The functions at sixty-four digits. */
export const exact = {
  exp: (x: number): Big => bigOf(big, x).exp(),
  ln: (x: number): Big => bigOf(big, x).ln(),
  log2: (x: number): Big => bigOf(big, x).log(2),
  log10: (x: number): Big => bigOf(big, x).log(10),
  atan: (x: number): Big => bigOf(big, x).atan(),
  sin: (x: number): Big => turned(x).sin(),
  cos: (x: number): Big => turned(x).cos(),
  tan: (x: number): Big => turned(x).tan(),
  power: (a: number, b: number): Big => bigOf(big, a).pow(bigOf(big, b)),
  /** Twice the angle to the bisector: y/(√(x² + y²) + x). */
  atan2: (y: number, x: number): Big => {
    const [up, side] = [bigOf(big, y), bigOf(big, x)];
    return up
      .div(up.times(up).plus(side.times(side)).sqrt().plus(side))
      .atan()
      .times(2);
  },
};

/** How far a double is from the exact value, in units of its last place. */
export function unitsOff(got: number, wanted: Big): number {
  const nearest = Number(wanted.toPrecision(40));
  const unit = 2 ** (Math.max(-1022, Math.floor(Math.log2(Math.abs(nearest)))) - 52);
  return Number(bigOf(big, got).minus(wanted).div(bigOf(big, unit)).toPrecision(20));
}
