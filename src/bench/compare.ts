import { quantileChances } from '../analysis/simulate/quantiles.ts';
import type { Simulation } from '../analysis/simulate/simulate.ts';
import { normalQuantile } from '../analysis/statistics.ts';
import type { NumpyResult } from './numpy.ts';
import { boardsFor, type Subject } from './subject.ts';

/** How many deviations of chance two simulations may differ by; among thousands of numbers some differ by four. */
const allowed = 6;

/**
 * Where two simulations of the same boards differ by more than chance explains: as text, one line each.
 * @param trials  of each of them
 */
export function differences(
  subject: Subject,
  ours: Simulation,
  numpy: readonly NumpyResult[],
  trials: number,
): string[] {
  const { outputs } = boardsFor(subject);
  return outputs.flatMap((slot, k) => {
    const place = subject.parts.outputs.indexOf(slot);
    const spread = ours.spreads[place]!;
    const [mean, sd, quantiles, , failures] = numpy[k]!;
    const name = `${subject.name}, output ${place}`;
    if (mean === null || sd === null || quantiles === null)
      return Number.isNaN(spread.sd) ? [] : [`${name}: no value by NumPy`];
    const off = (what: string, a: number, b: number, error: number): string[] =>
      Math.abs(a - b) <= allowed * error * Math.SQRT2 + 1e-9 * Math.abs(b)
        ? []
        : [`${name}: ${what} ${a} against ${b}`];
    const p = Math.max(failures, 1) / trials;
    return [
      ...off('mean', spread.mean, mean, sd / Math.sqrt(trials)),
      ...quantileChances.flatMap((chance, i) =>
        off(`quantile ${chance}`, spread.quantiles[i]!, quantiles[i]!, quantileError(chance, sd, trials)),
      ),
      ...(subject.slacks.counted[place] ? off('failures', ours.failures[place]!, failures, Math.sqrt(trials * p)) : []),
    ];
  });
}

/** Deviation of a sample quantile, for a distribution that is at most three times thinner there than a normal one. */
function quantileError(p: number, sd: number, n: number): number {
  const density = Math.exp(-(normalQuantile(p) ** 2) / 2) / Math.sqrt(2 * Math.PI) / sd;
  return (3 * Math.sqrt((p * (1 - p)) / n)) / density;
}
