import type { Circuit, PathPlace } from '../../spec/board.ts';
import { stations } from '../../spec/circuit-schema.ts';
import type { Place } from '../../spec/drawing/drawing.ts';
import type { Block, Cell, Row, Table } from '../block.ts';
import type { Drawing, DrawingLine, DrawingPart } from '../drawing.ts';
import { figureText, outward, plain, toSi } from '../figures.ts';
import { dash, link } from '../inline.ts';
import type { Numbering } from '../numbering.ts';
import type { Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { section } from './chapter.ts';
import { right, sans, serif } from './columns.ts';

interface Station {
  readonly circuit: Circuit;
  readonly path: PathPlace;
}

/** What carries the power current, from the pack to the motor, with current, heat and temperature of each. */
export function currentPath(review: Review, position: number, numbers: Numbering): Section | undefined {
  const way = review.board.circuits
    .flatMap((circuit): Station[] => (circuit.path ? [{ circuit, path: circuit.path }] : []))
    .toSorted((a, b) => stations.indexOf(a.path.station) - stations.indexOf(b.path.station));
  if (way.length < 2) return undefined;
  const blocks: Block[] = [chain(review, way, numbers), table(review, way, numbers)];
  return section('heat', position, 'path', 'From the pack to the motor', blocks);
}

/** Typical value, and the highest that the worst case reaches, as printed; a value that follows from others has no worst case. */
function endsOf(review: Review, id: string): { typical: string; worst: string | undefined } {
  const result = review.results.get(id);
  if (result) {
    const { nominal, worst } = review.findings.results[id]!;
    return {
      typical: figureText(plain(toSi(nominal, result.unit), result.unit, 3)),
      worst: figureText(outward(toSi(worst.max, result.unit), result.unit, 'up', 3)),
    };
  }
  const { value, unit } = review.inputs.get(id)!;
  if (value.kind === 'expression' && value.tree.kind === 'symbol') return endsOf(review, value.tree.name);
  const typical = figureText(plain(review.typical.get(id)!, unit, 3));
  if (value.kind === 'expression') return { typical, worst: undefined };
  return { typical, worst: figureText(plain(value.quantity.max, unit)) };
}

/** Boxes in rows of three, joined by the current in the order of the way. */
function chain(review: Review, way: readonly Station[], numbers: Numbering): Drawing {
  const boxes = way.map((station, i) => boxOf(review, station, i));
  const joints = way.slice(1).map((_, i): DrawingPart => joint(i));
  return {
    kind: 'drawing',
    id: 'drawing-path',
    number: numbers.figure(),
    caption: [
      'What carries the power current, from the pack to the motor: its current, and at worst its heat and temperature. Of several alike one is drawn.',
    ],
    parts: [...boxes, ...joints],
    alt: `The way of the power current: ${way.map(({ circuit }) => circuit.id).join(', then ')}.`,
  };
}

const perRow = 3;
const [across, down, boxWidth, boxHeight] = [11, 9, 9, 6];

const cornerOf = (index: number): Place => [(index % perRow) * across, Math.floor(index / perRow) * down];

function boxOf(review: Review, { circuit, path }: Station, index: number): DrawingPart {
  const [x, y] = cornerOf(index);
  const shown = [path.current, path.heat, path.temperature].flatMap((id) => (id ? [endsOf(review, id)] : []));
  const values = shown.map(({ typical, worst }): DrawingLine => [{ text: worst ?? `typ ${typical}`, face: 'value' }]);
  const name: DrawingLine = [{ text: circuit.id, face: 'designator' }];
  return {
    symbol: 'box',
    places: [
      [x, y],
      [x + boxWidth, y + boxHeight],
    ],
    heavy: false,
    label: [name, ...values],
  };
}

/** From the right edge of one box to the left edge of the next, in a new row round below the row before. */
function joint(index: number): DrawingPart {
  const [[x, y], [nx, ny]] = [cornerOf(index), cornerOf(index + 1)];
  const half = boxHeight / 2;
  const start: Place = [x + boxWidth, y + half];
  const end: Place = [nx, ny + half];
  const turn = y + boxHeight + 1.5;
  const round: Place[] = [
    [start[0] + 1, start[1]],
    [start[0] + 1, turn],
    [end[0] - 1, turn],
    [end[0] - 1, end[1]],
  ];
  return { symbol: 'power', places: y === ny ? [start, end] : [start, ...round, end], heavy: true, label: [] };
}

function table(review: Review, way: readonly Station[], numbers: Numbering): Table {
  const row = ({ circuit, path }: Station): Row => ({
    cells: [
      [link(circuit.id, circuit.id)],
      [circuit.title],
      [circuit.count > 1 ? `× ${circuit.count}` : '–'],
      ...cellsOf(review, path.current),
      ...cellsOf(review, path.heat),
      ...cellsOf(review, path.temperature),
    ],
  });
  return {
    kind: 'table',
    id: 'current-path',
    number: numbers.table(),
    caption: [
      'The same with typical values; heat and temperature are those of one of several alike. A value that is worked out from others in the specification has no worst case of its own.',
    ],
    columns: [
      sans('Element'),
      serif('What it is'),
      serif('Alike'),
      sans('Current'),
      right('Typical'),
      right('Worst'),
      sans('Heat'),
      right('Typical'),
      right('Worst'),
      sans('Temperature'),
      right('Typical'),
      right('Worst'),
    ],
    groups: [{ rows: way.map(row) }],
    wide: true,
  };
}

function cellsOf(review: Review, id: string | undefined): [Cell, Cell, Cell] {
  if (!id) return [dash, dash, dash];
  const { typical, worst } = endsOf(review, id);
  const name = id.slice(id.indexOf('.') + 1);
  return [[link(name, id)], [typical], worst ? [worst] : dash];
}
