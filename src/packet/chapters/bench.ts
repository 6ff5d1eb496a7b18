import type { BenchFinding, BenchVerdict } from '../../analysis/findings.ts';
import type { Result } from '../../spec/board.ts';
import type { Block, Cell, Column, Row, Table } from '../block.ts';
import { aligned, fixed, percent, toSi, unitFor } from '../figures.ts';
import { dash, em, joined, link, math, strong } from '../inline.ts';
import { numbering } from '../numbering.ts';
import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import type { Strip } from '../strip.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { requirementAnchor } from '../trail.ts';
import { capital, counted, inWords } from '../words.ts';
import { chapter } from './chapter.ts';
import { decimal, right, sans, serif, strip, unit, wide } from './columns.ts';
import { benchAnchor, pointLink } from './requirements.ts';
import { stimulusText } from './stimulus.ts';

/** What was read on real boards, beside what was predicted; there exactly when `bench.csv` is. */
export function bench(review: Review): Chapter | undefined {
  const readings = review.findings.bench;
  if (!readings.length) return undefined;
  const { table } = numbering(14);
  return chapter(
    'bench',
    [lead(readings), howToRead, comparison(review, readings, table), record(review, readings, table)],
    [],
    { landscape: true },
  );
}

function lead(readings: readonly BenchFinding[]): Block {
  const of = (verdict: BenchVerdict) => readings.filter((one) => one.verdict === verdict);
  const named = (list: readonly BenchFinding[]): Text =>
    joined(
      list.map(({ id }): Text => [link(id, benchAnchor(id))]),
      ', ',
    );
  const agree = readings.length - of('outside').length - of('undecided').length;
  const said = (verdict: BenchVerdict, one: string, many: string): Text => {
    const list = of(verdict);
    return list.length
      ? [` ${capital(counted(list.length, 'reading'))} ${list.length === 1 ? one : many}: `, ...named(list), '.']
      : [];
  };
  const opening =
    agree === readings.length
      ? readings.length === 1
        ? 'The reading lies where it was predicted.'
        : `All ${inWords(readings.length)} readings lie where they were predicted.`
      : `Of ${counted(readings.length, 'reading')}, ${inWords(agree)} ${agree === 1 ? 'lies' : 'lie'} where predicted.`;
  return {
    kind: 'paragraph',
    lead: true,
    text: [
      opening,
      ...said('outside', 'lies outside what the calculation allows', 'lie outside what the calculation allows'),
      ...said('undecided', 'is too near an end for its uncertainty', 'are too near an end for their uncertainty'),
      ...said('unusual', 'is inside, but far from the middle', 'are inside, but far from the middle'),
    ],
  };
}

const howToRead: Block = {
  kind: 'paragraph',
  text: [
    'Predicted is what a new board shows with the stimulus stated: nothing aged, every other condition at typical, parts anywhere in their tolerances. ',
    strong('As predicted'),
    ': inside by more than the uncertainty of the reading. ',
    strong('Unusual'),
    ': inside, but more than two standard deviations from the mean; one board in twenty is, by chance. ',
    strong('Undecided'),
    ': the uncertainty reaches over an end. ',
    strong('Outside'),
    ': the equation, the board or the meter is wrong, and whatever rests on the equation is in doubt.',
  ],
};

const columns: readonly Column[] = [
  sans('No.'),
  wide(sans('Point'), 0.11),
  serif('Reads'),
  wide(serif('Stimulus'), 0.15),
  decimal('Low'),
  decimal('Expected'),
  decimal('High'),
  decimal('Measured'),
  decimal('±'),
  unit('unit'),
  strip(0.11),
  right('Difference, σ'),
  right('Boards below, %'),
  sans('Verdict'),
];

/** Half-ranges of the prediction that the strips show. */
const reach = 1.7;

function comparison(review: Review, readings: readonly BenchFinding[], number: () => string): Table {
  return {
    kind: 'table',
    id: 'bench-readings',
    number: number(),
    caption: [
      'Readings beside their prediction. ±: uncertainty of the reading at 95\u00a0%. The strip runs from low to high; the triangle is the reading. σ is the standard deviation of the difference: that of the simulated boards and half the uncertainty, together.',
    ],
    columns,
    groups: [{ rows: readings.map((one) => row(review, one)) }],
    wide: true,
    scale: {
      from: -reach,
      to: reach,
      ticks: [
        { at: -1, text: 'low' },
        { at: 1, text: 'high' },
      ],
    },
  };
}

function row(review: Review, finding: BenchFinding): Row {
  const { id, reads, min, expected, max, measured, uncertainty, z, percentile, verdict } = finding;
  const result = review.results.get(reads)!;
  const point = finding.point ?? reads;
  return {
    id: benchAnchor(id),
    cells: [
      [strong(id)],
      pointLink(review, point),
      [math(idTex(reads))],
      stimulusText(finding.when, reads),
      ...numbers(result, [min, expected, max, measured], uncertainty, max > min),
      benchStrip(finding),
      [z === null ? '–' : signed(z)],
      [percentile === null ? '–' : percent(percentile, 1, 'nearest')],
      [verdict === 'outside' || verdict === 'undecided' ? strong(verdict) : verdict],
    ],
  };
}

/** Low, expected, high, measured, uncertainty and their unit; low and high only where something moves it. */
function numbers({ unit: of }: Result, values: readonly number[], uncertainty: number, varies: boolean): Cell[] {
  const si = values.map((x) => toSi(x, of));
  const shared = unitFor(si, of);
  const [low, expected, high] = aligned(si.slice(0, 3), shared, ['down', 'nearest', 'up']) as [string, string, string];
  const width = (uncertainty * of.scale) / shared.scale;
  return [
    varies ? { number: low } : dash,
    { number: expected },
    varies ? { number: high } : dash,
    { number: readingText((si[3]! - shared.offset) / shared.scale, decimalsOf(width)), strong: true },
    { number: fixed(width, decimalsOf(width), 'up') },
    shared.text ? [shared.text] : dash,
  ];
}

/** As many decimals as the uncertainty gives it, six digits at most. */
function readingText(value: number, decimals: number): string {
  const whole = Math.max(1, Math.floor(Math.log10(Math.abs(value) || 1)) + 1);
  return fixed(value, Math.max(0, Math.min(decimals, 6 - whole)));
}

/** Two digits of an uncertainty: more say nothing. */
const decimalsOf = (width: number): number =>
  width > 0 ? Math.max(0, Math.min(6, 1 - Math.floor(Math.log10(width)))) : 0;

const signed = (z: number): string => `${z > 0 ? '+' : ''}${fixed(z, 1)}`;

/** On a scale where low and high of the prediction stand at −1 and 1. */
function benchStrip({ min, max, measured, expected, verdict }: BenchFinding): Cell {
  if (!(max > min)) return dash;
  const on = (x: number): number => (2 * x - min - max) / (max - min);
  const found: Strip = {
    scale: [-reach, reach],
    worst: [-1, 1],
    typical: on(expected),
    measured: on(measured),
    limits: [],
    labels: [],
    says: `The reading is ${verdict}.`,
  };
  return { strip: found };
}

/** Who read what, with which meter, on which board, and what it is evidence for. */
function record(review: Review, readings: readonly BenchFinding[], number: () => string): Table {
  return {
    kind: 'table',
    id: 'bench-record',
    number: number(),
    caption: [`What was read with, on which board and when. The lines stand in bench.csv of ${review.board.revision}.`],
    columns: [
      sans('No.'),
      serif('Board'),
      serif('Instrument'),
      serif('Date'),
      serif('By'),
      serif('Remark'),
      sans('Evidence for'),
      right('Line'),
    ],
    groups: [
      {
        rows: readings.map(({ id, line, sample, instrument, date, by, remark, closes }) => ({
          cells: [
            [id],
            [sample ?? '–'],
            [instrument ?? '–'],
            [date],
            [by ?? '–'],
            remark ? [em(remark)] : dash,
            closes.length
              ? joined(
                  closes.map((one): Text => [link(one, requirementAnchor(one))]),
                  ', ',
                )
              : dash,
            [String(line)],
          ],
        })),
      },
    ],
    wide: true,
  };
}
