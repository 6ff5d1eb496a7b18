import type { Findings, StimulusFinding } from '../../analysis/findings.ts';
import type { Board } from '../../spec/board.ts';
import type { CsvCell } from '../csv.ts';

/** The requirement matrix: how each is shown, and what is still open. */
export function requirementRows({ requirements }: Board, { requirements: found, checks }: Findings): CsvCell[][] {
  const marginOf = (id: string | null): number | null => checks.find((check) => check.id === id)?.margin ?? null;
  return [
    [
      'requirement',
      'says',
      'method',
      'shown by',
      'tested at',
      'evidence',
      'thinnest',
      'margin',
      'verdict',
      'state',
      'open',
    ],
    ...found.map((one, i) => {
      const { says, shownBy, tested, evidence } = requirements[i]!;
      return [
        one.id,
        says,
        one.methods.join(' '),
        shownBy.join(' '),
        tested.join(' '),
        [...one.readings, ...evidence].join('; '),
        one.thinnest,
        marginOf(one.thinnest),
        one.verdict,
        one.state,
        one.open.join('; '),
      ];
    }),
  ];
}

/** `I_ph = 40 A; T_amb = 25 °C` */
const set = (when: StimulusFinding['when']): string =>
  Object.entries(when)
    .map(([symbol, { value, unit }]) => `${symbol} = ${value}${unit === '1' ? '' : ` ${unit}`}`)
    .join('; ');

/** Readings of a new board, and what may be accepted. */
export function testPointRows({ test_points: points }: Findings): CsvCell[][] {
  return [
    [
      'point',
      'step',
      'reads',
      'stimulus',
      'held at typical',
      'low',
      'expected',
      'high',
      'unit',
      'uncertainty',
      'accept from',
      'accept to',
      'refused',
    ],
    ...points.map(({ id, step, reads, when, held, min, expected, max, unit, accept }) => [
      id,
      step,
      reads,
      set(when),
      set(held),
      min,
      expected,
      max,
      unit,
      accept?.uncertainty ?? null,
      accept?.from ?? null,
      accept?.to ?? null,
      accept?.refused ?? null,
    ]),
  ];
}

/** Readings of real boards beside their prediction. */
export function benchRows({ bench }: Findings): CsvCell[][] {
  return [
    [
      'no',
      'line',
      'point',
      'reads',
      'stimulus',
      'low',
      'expected',
      'high',
      'accept from',
      'accept to',
      'measured',
      'uncertainty',
      'unit',
      'z',
      'boards below',
      'verdict',
      'requirements',
      'sample',
      'instrument',
      'date',
      'by',
      'remark',
    ],
    ...bench.map((one) => [
      one.id,
      one.line,
      one.point,
      one.reads,
      set(one.when),
      one.min,
      one.expected,
      one.max,
      one.accept_from,
      one.accept_to,
      one.measured,
      one.uncertainty,
      one.unit,
      one.z,
      one.percentile,
      one.verdict,
      one.closes.join(' '),
      one.sample ?? null,
      one.instrument ?? null,
      one.date,
      one.by ?? null,
      one.remark ?? null,
    ]),
  ];
}
