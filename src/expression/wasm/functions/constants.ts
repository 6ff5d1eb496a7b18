/** ln 2 with 32 of its bits, so that whole multiples up to 2²¹ are exact, and the rest. */
export const LN2 = [0.6931471803691238, 1.9082149292705877e-10] as const;
/** 1/ln 2 and 1/ln 10, with 26 of their bits, and the rest. */
export const PER_LN2 = [1.4426950216293335, 1.9259629911266175e-8] as const;
export const PER_LN10 = [0.4342944771051407, 4.798111141615973e-9] as const;
/** log₁₀ 2 with 32 of its bits, and the rest. */
export const LOG10_2 = [0.3010299955494702, 1.1451100898021838e-10] as const;

/** The nearest doubles to π, π/2 and π/4, and what they are short of. */
export const PI = [Math.PI, 1.2246467991473532e-16] as const;
export const HALF_PI = [Math.PI / 2, 6.123233995736766e-17] as const;
export const QUARTER_PI = [Math.PI / 4, 3.061616997868383e-17] as const;
/** π/2 in four parts: three of 33 bits, whose multiples up to 2²⁰ are exact, and the rest. */
export const HALF_PI_PARTS = [
  1.5707963267341256, 6.077100506303966e-11, 2.0222662487111665e-21, 8.4784276603689e-32,
] as const;

/** 1.5·2⁵²: a number added to it is rounded to a whole one, which stands in the low bits. */
export const ROUNDER = 6755399441055744;
