import { betaQuantile, clopperPearson, normalCdf, normalQuantile, summarise } from '../../analysis/statistics.ts';
import type { DataSet } from '../check.ts';
import type { Figures } from '../judge.ts';

/** Figures of a function of the statistics by their names: `normal quantile` gives `z`. */
export function statisticFigures(
  name: string,
  given: Readonly<Record<string, string>>,
  sets: ReadonlyMap<string, DataSet>,
): Figures {
  const statistic = statistics[name];
  if (!statistic) throw new Error(`There is no statistic ${name}`);
  const figures = statistic((key) => Number(given[key]), sets.get(given.set ?? '')?.values);
  return (what) => {
    const value = figures[what];
    if (value === undefined) throw new Error(`${name} gives no ${what}`);
    return value;
  };
}

type Statistic = (given: (key: string) => number, values: readonly number[] | undefined) => Record<string, number>;

const statistics: Readonly<Record<string, Statistic>> = {
  'normal quantile': (given) => ({ z: normalQuantile(given('p')), 'z of 1 - p': normalQuantile(1 - given('p')) }),
  'normal tails': (given) => ({
    outside:
      1 -
      normalCdf((given('high') - given('mean')) / given('sd')) +
      normalCdf((given('low') - given('mean')) / given('sd')),
  }),
  'beta quantile': (given) => ({ x: betaQuantile(given('p'), given('a'), given('b')) }),
  'interval of a fraction': (given) => ({ ...clopperPearson(given('failures'), given('n'), given('confidence')) }),
  'trials without failure': (given) => ({ n: leastTrials(given('content'), given('confidence')) }),
  summary: (_, values = []) => summary(values),
  'summary of pairs': (given) => summary(paired(given('base'))),
};

/** The fewest trials, none of which fails, that show a content at a confidence; more trials show more. */
function leastTrials(content: number, confidence: number): number {
  const shown = (n: number): boolean => clopperPearson(0, n, confidence).high <= 1 - content;
  let most = 1;
  while (!shown(most)) most *= 2;
  let least = most / 2;
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2);
    if (shown(middle)) most = middle;
    else least = middle;
  }
  return most;
}

function summary(values: readonly number[]): Record<string, number> {
  const { mean, sd } = summarise(Float64Array.from(values));
  return { mean, sd };
}

/** One value of base + 0.2, then 500 pairs of base + 0.1 and base + 0.3: mean base + 0.2, deviation 0.1 exactly. */
function paired(base: number): number[] {
  const [low, middle, high] = [0.1, 0.2, 0.3].map((step) => Number((base + step).toFixed(1))) as [
    number,
    number,
    number,
  ];
  return [middle, ...Array.from({ length: 500 }, () => [low, high]).flat()];
}
