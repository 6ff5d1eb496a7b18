import type { StimulusFinding } from '../../analysis/findings.ts';
import type { TestPoint } from '../../spec/board.ts';
import type { Block, Cell, Column, Row, Table } from '../block.ts';
import { byId } from '../by-id.ts';
import { cautionLine } from '../caution-block.ts';
import { aligned, fixed, percent, toSi, unitFor } from '../figures.ts';
import { dash, strong } from '../inline.ts';
import { numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { idLink } from '../trail.ts';
import { capital, counted } from '../words.ts';
import { type Stage, stages } from './bench-stages.ts';
import { chapter, section } from './chapter.ts';
import { blank, decimal, right, sans, serif, unit, wide } from './columns.ts';
import { setUp } from './stimulus.ts';

interface Point {
  readonly point: TestPoint;
  readonly reading: StimulusFinding;
}

/** What a meter should show: a sheet for bringing the first boards up, and one for those that follow. */
export function testPoints(review: Review): Chapter | undefined {
  const found = byId(review.findings.test_points);
  const points = review.board.circuits.flatMap((circuit) =>
    circuit.testPoints.map((point): Point => ({ point, reading: found.get(`${circuit.id}.${point.name}`)! })),
  );
  if (!points.length) return undefined;
  const { table } = numbering(12);
  const used = stages.filter(
    (stage) => points.some(({ reading }) => reading.step === stage.key) || met(review, stage).length > 0,
  );
  const sections = [
    section('test-points', 1, 'bring-up', 'Bring-up sheet', bringUp(review, used, points, table)),
    ...production(review, points, table),
  ];
  return chapter('test-points', [howToRead], sections, { landscape: true });
}

const howToRead: Block = {
  kind: 'paragraph',
  text: [
    'Readings of a new board: the stimulus applied, every other condition at typical, parts anywhere in their tolerances. No board within its tolerances reads outside low and high, rounded outward. Accept is what remains of them with the uncertainty of the measurement taken off at both ends (ILAC-G8, guard band of the whole uncertainty): a reading inside it is sure. Outside low and high: stop, switch off, and find out why before anything else is connected.',
  ],
};

/** Cautions that are met at a stage. */
const met = ({ cautions }: Review, { meets }: Stage): Review['cautions'] =>
  cautions.filter(({ steps = [] }) => steps.some((step) => meets.includes(step)));

/** The stages in the order of what can go wrong, each behind a hold point with its cautions. */
function bringUp(review: Review, used: readonly Stage[], points: readonly Point[], number: () => string): Block[] {
  const seen = new Set<string>();
  return used.flatMap((stage, i): Block[] => {
    const here = points.filter(({ reading }) => reading.step === stage.key);
    // A caution is said in full where it is met first.
    const cautions = met(review, stage).map((caution): Block => {
      const full = !seen.has(caution.id);
      seen.add(caution.id);
      return { kind: 'paragraph', text: cautionLine(caution, full) };
    });
    return [
      { kind: 'heading', text: `Hold point ${i + 1}: ${stage.title}` },
      ...cautions,
      {
        kind: 'table',
        id: `test-points-${stage.key}`,
        number: number(),
        caption: [stage.says],
        columns,
        groups: [
          {
            rows: [holdRow(i + 1, stage), ...here.map(({ point, reading }) => row(review, point, reading))],
          },
        ],
        wide: true,
      },
    ];
  });
}

const columns: readonly Column[] = [
  wide(sans('Point'), 0.12),
  wide(serif('What it is'), 0.17),
  wide(serif('Stimulus'), 0.13),
  decimal('Low'),
  decimal('Expected'),
  decimal('High'),
  unit('unit'),
  decimal('Accept from'),
  decimal('to'),
  blank('Measured', 0.11),
  blank('Initials', 0.07),
  wide(sans('Calculated at'), 0.11),
];

/** Nobody goes on before this line is signed. */
const holdRow = (position: number, { before }: Stage): Row => ({
  cells: [[strong(`Hold ${position}`)], [before], dash, dash, dash, dash, dash, dash, dash, [], [], dash],
});

function row(review: Review, point: TestPoint, reading: StimulusFinding): Row {
  const result = review.results.get(point.reads)!;
  const { numbers, unit: shared, accept } = numbersOf(review, reading);
  return {
    id: `test-${reading.id}`,
    cells: [
      [strong(reading.id)],
      [point.says ?? result.says],
      setUp(reading),
      ...numbers,
      shared ? [shared] : dash,
      ...accept,
      [],
      [],
      idLink(review.trail, point.reads),
    ],
  };
}

/** Low, expected, high, and what may be accepted, all in one unit. */
function numbersOf(
  review: Review,
  { reads, min, expected, max, accept }: StimulusFinding,
): { numbers: Cell[]; unit: string; accept: Cell[] } {
  const { unit: of } = review.results.get(reads)!;
  const values = [min, expected, max].map((x) => toSi(x, of));
  const shared = unitFor(values, of);
  const [low, middle, high] = aligned(values, shared, ['down', 'nearest', 'up']) as [string, string, string];
  return {
    // A bound may lie a rounding error beyond what no part can move.
    numbers: low !== high ? [{ number: low }, { number: middle }, { number: high }] : [dash, { number: middle }, dash],
    unit: shared.text,
    accept: accept ? limits(accept, of, shared) : [dash, dash],
  };
}

/** Rounded inward: what is printed must not accept more than what was calculated. */
function limits(
  { from, to }: NonNullable<StimulusFinding['accept']>,
  of: Parameters<typeof toSi>[1],
  shared: Parameters<typeof toSi>[1],
): Cell[] {
  if (from > to) return [['none'], ['none']];
  const [low, high] = aligned([toSi(from, of), toSi(to, of)], shared, ['up', 'down']) as [string, string];
  return [
    { number: low, strong: true },
    { number: high, strong: true },
  ];
}

/** For the boards that follow: only what is read with a known uncertainty can be accepted or refused. */
function production(review: Review, points: readonly Point[], number: () => string): Section[] {
  const tested = points.filter(({ reading }) => reading.accept !== null);
  if (!tested.length) return [];
  const table: Table = {
    kind: 'table',
    id: 'production-limits',
    number: number(),
    caption: [
      'Limits for boards in production. U: uncertainty of the measurement at 95\u00a0%. Ratio: half of low to high over U; below 4 the meter is coarse for the job (common practice, no source). Refused: share of good boards that the guard band costs.',
    ],
    columns: [
      wide(sans('Point'), 0.13),
      wide(serif('Stimulus'), 0.16),
      decimal('Accept from'),
      decimal('to'),
      unit('unit'),
      decimal('U'),
      right('Ratio'),
      right('Refused, %'),
      blank('Board', 0.1),
      blank('Board', 0.1),
      blank('Board', 0.1),
    ],
    groups: [
      {
        rows: [
          { cells: [[strong('Serial no.')], dash, dash, dash, dash, dash, dash, dash, [], [], []] },
          { cells: [[strong('Firmware')], dash, dash, dash, dash, dash, dash, dash, [], [], []] },
          ...tested.map((one) => productionRow(review, one)),
          { cells: [[strong('Initials, date')], dash, dash, dash, dash, dash, dash, dash, [], [], []] },
        ],
      },
    ],
    wide: true,
  };
  const silent = points.length - tested.length;
  const note: Block[] = silent
    ? [
        {
          kind: 'paragraph',
          text: [
            `${capital(counted(silent, 'point'))} of the bring-up sheet ${silent === 1 ? 'is' : 'are'} not here: the specification states no uncertainty for ${silent === 1 ? 'it' : 'them'}.`,
          ],
        },
      ]
    : [];
  return [section('test-points', 2, 'production', 'Production sheet', [table, ...note])];
}

function productionRow(review: Review, { point, reading }: Point): Row {
  const { accept, unit: shared } = numbersOf(review, reading);
  const { uncertainty, refused } = reading.accept!;
  const { unit: of } = review.results.get(point.reads)!;
  const printed = unitFor(
    [reading.min, reading.expected, reading.max].map((x) => toSi(x, of)),
    of,
  );
  const width = (uncertainty * of.scale) / printed.scale;
  const ratio = (reading.max - reading.min) / 2 / uncertainty;
  return {
    cells: [
      [strong(reading.id)],
      setUp(reading),
      ...accept,
      shared ? [shared] : dash,
      { number: fixed(width, twoDigits(width), 'up') },
      [ratio > 0 ? fixed(ratio, 1, 'down') : '–'],
      [refused === null ? '–' : percent(refused, 1, 'up')],
      [],
      [],
      [],
    ],
  };
}

const twoDigits = (width: number): number => Math.max(0, Math.min(6, 1 - Math.floor(Math.log10(width))));
