import type { StimulusFinding } from '../../analysis/findings.ts';
import { parseUnit } from '../../quantity/units.ts';
import type { Circuit, TestPoint } from '../../spec/board.ts';
import type { Block, Cell, Column, Row, Table } from '../block.ts';
import { byId } from '../by-id.ts';
import { cautionLine } from '../caution-block.ts';
import { aligned, figureText, plainTyped, toSi, unitFor } from '../figures.ts';
import { dash, joined, math, strong } from '../inline.ts';
import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { idLink } from '../trail.ts';
import { chapter, section } from './chapter.ts';
import { blank, decimal, sans, serif, unit } from './columns.ts';

/** What a meter should show, for whoever brings the board up. */
export function testPoints(review: Review): Chapter | undefined {
  const found = byId(review.findings.test_points);
  const points = review.board.circuits.flatMap((circuit) =>
    circuit.testPoints.map((point) => ({ circuit, point, reading: found.get(`${circuit.id}.${point.name}`)! })),
  );
  if (!points.length) return undefined;
  const table: Table = {
    kind: 'table',
    id: 'test-points',
    number: '12.1',
    caption: [
      'Readings of a new board on the bench: the stimulus applied, every other condition at typical, all parts anywhere in their tolerances. No board within its tolerances reads outside low and high, rounded outward; take the uncertainty of the meter off on both sides.',
    ],
    columns,
    groups: [{ rows: points.map(({ circuit, point, reading }) => row(review, circuit, point, reading)) }],
    wide: true,
  };
  const met = metOnTheBench(review);
  if (!met.length) return chapter('test-points', [table]);
  return chapter(
    'test-points',
    [],
    [
      section('test-points', 1, 'before', 'Before anything is powered', met),
      section('test-points', 2, 'readings', 'Readings', [table]),
    ],
  );
}

/** Steps of bringing a board up at which a caution is met. */
const benchSteps = ['joining', 'first-power', 'bring-up', 'motor', 'waveforms', 'usb'];

/** The cautions stand before the readings, at the step where the hand goes in. */
function metOnTheBench({ cautions }: Review): Block[] {
  const met = cautions.filter(({ steps = [] }) => steps.some((step) => benchSteps.includes(step)));
  return met.map((caution) => ({ kind: 'paragraph', text: cautionLine(caution, true) }));
}

const columns: readonly Column[] = [
  sans('Point'),
  serif('Reads'),
  serif('What it is'),
  serif('Stimulus'),
  decimal('Low'),
  decimal('Expected'),
  decimal('High'),
  unit('unit'),
  blank('Measured', 0.13),
  sans('Calculated at'),
];

function row(review: Review, circuit: Circuit, point: TestPoint, reading: StimulusFinding): Row {
  const result = review.results.get(point.reads)!;
  const [min, expected, max] = [reading.min, reading.expected, reading.max].map((x) => toSi(x, result.unit)) as [
    number,
    number,
    number,
  ];
  const unit = unitFor([min, expected, max], result.unit);
  const [low, middle, high] = aligned([min, expected, max], unit, ['down', 'nearest', 'up']) as [
    string,
    string,
    string,
  ];
  const numbers: Cell[] =
    // A bound may lie a rounding error beyond what no part can move.
    low !== high ? [{ number: low }, { number: middle }, { number: high }] : [dash, { number: middle }, dash];
  return {
    id: `test-${reading.id}`,
    cells: [
      [strong(reading.id)],
      [math(idTex(point.reads))],
      [point.says ?? result.says],
      stimulus(circuit, reading),
      ...numbers,
      unit.text ? [unit.text] : dash,
      [],
      idLink(review.trail, point.reads),
    ],
  };
}

function stimulus(circuit: Circuit, { when }: StimulusFinding): Text {
  const set = Object.entries(when);
  if (!set.length) return dash;
  const text = ({ value, unit }: { readonly value: number; readonly unit: string }): string => {
    const printed = parseUnit(unit);
    return figureText(plainTyped(toSi(value, printed), printed));
  };
  return joined(
    set.map(([symbol, quantity]): Text => [math(idTex(`${circuit.id}.${symbol}`)), ` = ${text(quantity)}`]),
    ', ',
  );
}
