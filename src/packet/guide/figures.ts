import type { ResultFinding } from '../../analysis/findings.ts';
import { parseUnit } from '../../quantity/units.ts';
import type { Figure } from '../block.ts';
import type { Reviewed } from '../by-id.ts';
import { figureText, outward, plain, toSi } from '../figures.ts';
import type { Histogram } from '../plot.ts';
import { grouped } from '../words.ts';
import { boundsFigure } from './bounds-figure.ts';

/** Boards of the guide's examples, by the name of their file. */
export type GuideBoards = Readonly<Record<'divider' | 'words' | 'load', Reviewed>>;

/** Pictures of the guide, each worked out from an example that stands beside it. */
export const guideFigures = (boards: GuideBoards): Figure[] => [
  spreadFigure(boards.divider),
  ...(['R_n', 'R_t', 'R_u'] as const).map((symbol) => wordFigure(boards.words, symbol)),
  boundsFigure(boards.load),
];

/** One result three ways: over the boards, at the corners, and by root-sum-square. */
function spreadFigure({ findings }: Reviewed): Figure {
  const result = findings.results['sense.V_out']!;
  const { worst, rss, nominal } = result;
  const limit = findings.checks[0]!.limit!;
  const { quantiles } = result.spread!;
  return {
    kind: 'figure',
    id: 'guide-spread',
    number: '1',
    caption: [
      `Voltage at the converter over ${grouped(findings.trials)} simulated boards. Below the bars on the same scale: the worst case, root-sum-square, and the middle 99.73\u00a0% of boards.`,
    ],
    width: 'column',
    alt: `Histogram of the voltage at the converter with the limit at ${limit} V; worst case ${three(worst.min)} to ${three(worst.max)} V, root-sum-square ${three(rss.min)} to ${three(rss.max)} V, boards ${three(quantiles['0.00135'])} to ${three(quantiles['0.99865'])} V.`,
    plot: {
      ...bars(result, 'Voltage at the converter, V'),
      limits: [{ at: limit, forbidden: 'above', label: `limit ${figureText(plain(limit, volt))}` }],
      intervals: {
        worst: [worst.min, worst.max],
        typical: nominal,
        rootSumSquare: [rss.min, rss.max],
        spread: [quantiles['0.00135'], quantiles['0.5'], quantiles['0.99865']],
      },
    },
  };
}

const volt = parseUnit('V');
const three = (value: number): string => value.toFixed(3);

/** What one word behind a tolerance makes of the same limits. */
function wordFigure({ board, findings }: Reviewed, symbol: 'R_n' | 'R_t' | 'R_u'): Figure {
  const id = `parts.${symbol}`;
  const { says, unit } = board.circuits[0]!.results.find((result) => result.id === id)!;
  const result = findings.results[id]!;
  const [low, high] = [result.worst.min, result.worst.max].map((end, i) =>
    figureText(outward(toSi(end, unit), unit, i ? 'up' : 'down')),
  );
  return {
    kind: 'figure',
    id: `guide-${symbol}`,
    number: String(2 + ['R_n', 'R_t', 'R_u'].indexOf(symbol)),
    caption: [`${says}: the same limits, ${low} to ${high}, and the same worst case.`],
    width: 'half',
    alt: `Histogram of a resistor of 10 kΩ ±1 %: ${says.toLowerCase()}.`,
    plot: bars(result, 'Resistance, kΩ'),
  };
}

function bars({ spread }: ResultFinding, title: string): Histogram {
  const { from, to, counts } = spread!.histogram;
  const step = (to - from) / counts.length;
  return {
    kind: 'histogram',
    title,
    edges: Array.from({ length: counts.length + 1 }, (_, i) => from + i * step),
    counts,
    limits: [],
    quantiles: [],
    worst: [],
  };
}
