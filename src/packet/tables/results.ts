import type { Findings } from '../../analysis/findings.ts';
import type { Board } from '../../spec/board.ts';
import type { CsvCell } from '../csv.ts';
import { cornerCell } from './at.ts';

/** Every result with its three methods side by side. */
export function resultRows({ circuits, totals }: Board, { results }: Findings): CsvCell[][] {
  const all = [...circuits.flatMap(({ results: own, firmware }) => [...own, ...firmware]), ...totals];
  return [
    [
      'result',
      'what it is',
      'equation',
      'unit',
      'typical',
      'worst min',
      'worst max',
      'no less than',
      'no more than',
      'proven',
      'at min',
      'at max',
      'root-sum-square low',
      'root-sum-square high',
      'mean',
      'standard deviation',
      '0.135 %',
      '2.5 %',
      '50 %',
      '97.5 %',
      '99.865 %',
    ],
    ...all.map(({ id, says, text }): CsvCell[] => {
      const { unit, nominal, worst, rss, spread } = results[id]!;
      const quantiles = spread
        ? [
            spread.quantiles['0.00135'],
            spread.quantiles['0.025'],
            spread.quantiles['0.5'],
            spread.quantiles['0.975'],
            spread.quantiles['0.99865'],
          ]
        : [null, null, null, null, null];
      return [
        id,
        says,
        text,
        unit,
        nominal,
        worst.min,
        worst.max,
        worst.min_bound,
        worst.max_bound,
        worst.proven ? 'yes' : 'no',
        cornerCell(worst.at_min),
        cornerCell(worst.at_max),
        rss.min,
        rss.max,
        spread?.mean ?? null,
        spread?.sd ?? null,
        ...quantiles,
      ];
    }),
  ];
}

/** What each input contributes to each result. */
export function sensitivityRows({ results }: Findings): CsvCell[][] {
  return [
    ['result', 'input', 'share of the variance', 'share of the worst case', 'moves it by', 'unit of the result'],
    ...Object.entries(results).flatMap(([id, { sensitivity, unit }]) =>
      sensitivity.map((one) => [id, one.input, one.variance, one.worst, one.swing, unit]),
    ),
  ];
}
