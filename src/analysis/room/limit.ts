/** How far one number may go before a slack that is positive at `start` turns negative. */
export interface Crossing {
  /** The last value at which it holds, to 1e-6; not beyond `end`. */
  readonly at: number;
  /** Whether it fails there, or `end` was reached first. */
  readonly stops: boolean;
}

/**
 * Looks from `start` toward `end` for the first place where `slack` turns negative: steps that double until it does, then
 * halving. Steps start small, so that a slack that dips and rises again is passed over only where it dips for less than
 * a step.
 */
export function crossing(slack: (x: number) => number, start: number, end: number): Crossing {
  const span = end - start;
  let holds = 0;
  let fails: number | undefined;
  for (let step = 1 / 256; step <= 1; step *= 2) {
    if (slack(start + span * step) >= 0) holds = step;
    else {
      fails = step;
      break;
    }
  }
  if (fails === undefined) return { at: end, stops: false };
  let [low, high]: [number, number] = [holds, fails];
  for (let i = 0; i < 40 && (high - low) * Math.abs(span) > 1e-7 * Math.abs(start + span * high); i++) {
    const middle = (low + high) / 2;
    if (slack(start + span * middle) >= 0) low = middle;
    else high = middle;
  }
  holds = low;
  return { at: start + span * holds, stops: true };
}
