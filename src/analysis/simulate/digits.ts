import type { Spread } from './spread.ts';

/** Boards that tell how many are needed. */
export const pilot = 16_384;
/** Boards that are simulated where fewer would do: none failing then means 30 ppm at most. */
const fewest = 100_000;
/** What no board's spread is worth waiting longer for. */
const most = 800_000;

/**
 * What a simulated figure may be off: half a unit of the first digit of the standard deviation.
 * Source: JCGM 101:2008, 7.9.2, with one significant digit.
 * @example numericalTolerance(0.0237) // 0.005
 */
export const numericalTolerance = (sd: number): number => 10 ** Math.floor(Math.log10(sd)) / 2;

/** How many times over its tolerance the outermost quantiles' 95 % confidence reaches; at most 1 is stable. */
export function looseness({ sd, quantiles, within }: Spread): number {
  if (!(sd > 0)) return 0;
  const tolerance = numericalTolerance(sd);
  return Math.max(
    ...[0, quantiles.length - 1].map((i) => {
      const [least, greatest] = within[i]!;
      return (greatest - least) / 2 / tolerance;
    }),
  );
}

/**
 * Boards after which the digits printed of each quantile would hold still, as far as `trials` boards can tell: confidence
 * narrows with the root of their number.
 * Source: JCGM 101:2008, 7.9.4, by one further run of the length foreseen instead of one batch after the other.
 */
export function boardsForDigits(spreads: readonly Spread[], trials: number): number {
  const loosest = Math.max(0, ...spreads.map(looseness));
  if (loosest <= 1 && trials >= fewest) return trials;
  // A tenth more, for what the foresight itself may be off.
  const needed = Math.ceil((trials * loosest ** 2 * 1.1) / 50_000) * 50_000;
  return Math.min(most, Math.max(fewest, trials, needed));
}
