import type { RoomEnd, RoomFinding } from '../../analysis/findings.ts';
import { formatTyped } from '../../quantity/figure.ts';
import { pureUnit } from '../../quantity/units.ts';
import type { Circuit, Input } from '../../spec/board.ts';
import { chapterAnchor } from '../anchors.ts';
import type { Block, Cell, Column, Row, RowGroup, Table } from '../block.ts';
import { figureText, fixed, outward, toSi } from '../figures.ts';
import { dash, em, joined, link, math, strong } from '../inline.ts';
import { numbering } from '../numbering.ts';
import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import type { Strip } from '../strip.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { specifiedAs } from '../tolerance.ts';
import { checkLink } from '../trail.ts';
import { inWords, sentence } from '../words.ts';
import { appliedText } from './applied.ts';
import { chapter } from './chapter.ts';

import { decimal, right, sans, serif, strip } from './columns.ts';
import { criticalItems } from './critical-items.ts';
import { preferredValues } from './preferred-values.ts';
import { proposals } from './proposals.ts';

/** One line of the parts list: what carries a designator, or is a part by its method, and its ratings. */
interface PartLine {
  readonly circuit: Circuit;
  readonly input: Input;
}

/** Everything on the board that is bought: values first, then ratings, circuit by circuit. */
function partLines({ board }: Review): PartLine[] {
  return board.circuits.flatMap((circuit) => {
    const bought = circuit.inputs.filter(
      ({ value, refs, part, rating }) =>
        (value.kind === 'part' || value.kind === 'exact') && (refs !== undefined || part !== undefined || rating),
    );
    return bought.toSorted((a, b) => Number(a.rating) - Number(b.rating)).map((input) => ({ circuit, input }));
  });
}

/** For the buyer: what each part is, how far it may differ, and why it was chosen. */
export function parts(review: Review): Chapter | undefined {
  const lines = partLines(review);
  if (!lines.length) return undefined;
  const groups = review.board.circuits.flatMap((circuit): RowGroup[] => {
    const own = lines.filter((line) => line.circuit === circuit);
    return own.length
      ? [{ title: titleOf(review, circuit), rows: own.map((line, i) => row(review, line, i === 0)) }]
      : [];
  });
  const numbers = numbering(11);
  const table: Table = {
    kind: 'table',
    id: 'parts-list',
    number: numbers.table(),
    caption: [
      'Room: how far the nominal value may move, all else as specified, before the check named last fails in the worst case; how many times as wide the tolerance may get; how low a rating may go. Applied ÷ allowed: what a rating bears in the worst case over what its derating policy leaves of it. “Any”: nothing stops it from a tenth to ten times the value. Checks that fail already stop nothing.',
    ],
    columns,
    groups,
    wide: true,
    scale,
  };
  const more = [...preferredValues(review, numbers), ...proposals(review, numbers)];
  const sections = [criticalItems(review, numbers)].filter((one) => one !== undefined);
  return chapter('parts', [lead, table, ...more], sections, { landscape: true });
}

const lead: Block = {
  kind: 'paragraph',
  text: [
    'A part may be exchanged for one with the same value, a tolerance and drift no wider, and ratings no lower. Room is for one change at a time: two changes need ',
    link('a new calculation', chapterAnchor({ slug: 'calculations' })),
    '.',
  ],
};

const scale = {
  from: -40,
  to: 40,
  ticks: [
    { at: -20, text: '\u221220' },
    { at: 0, text: 'as chosen' },
    { at: 20, text: '+20' },
  ],
};

const columns: readonly Column[] = [
  sans('Part'),
  serif('Symbol'),
  serif('What it is'),
  serif('Value, tolerance, drift'),
  serif('Rating'),
  right('Applied ÷ allowed'),
  decimal('Down, %'),
  strip(0.14),
  decimal('Up, %'),
  serif('Loosest'),
  sans('Held by'),
  serif('Why this one'),
];

function titleOf({ trail }: Review, circuit: Circuit): string {
  return `${trail.sections.get(circuit.id)} ${circuit.title}${circuit.count > 1 ? `, ${inWords(circuit.count)} alike` : ''}`;
}

function row(review: Review, { circuit, input }: PartLine, first: boolean): Row {
  if (input.value.kind === 'expression') throw new Error(`${input.id} follows from others and is no part`);
  const specified = specifiedAs(input.value);
  const room = review.findings.room.find((one) => one.input === input.id);
  return {
    id: `part-${input.id}`,
    cells: [
      input.refs ? [strong(input.refs)] : dash,
      [math(idTex(input.id))],
      [link(input.says ?? input.id, input.id)],
      input.rating ? dash : [specified],
      input.rating ? [specified] : dash,
      appliedText(review, input),
      ...(room ? roomCells(room, input) : [dash, dash, dash, dash, dash]),
      why(circuit, first),
    ],
    ...(review.changes.ids.has(input.id) ? { changed: true } : {}),
  };
}

/** Down, strip, up, loosest or lowest, held by. */
function roomCells(room: RoomFinding, input: Input): Cell[] {
  if (room.rating) return [dash, dash, dash, lowest(room, input), heldBy([room.low])];
  const tolerance = room.tolerance
    ? [`× ${formatTyped(room.tolerance.factor, pureUnit, { digits: 2, round: 'down' }).number}`]
    : ['any'];
  return [
    moved(room, room.low, 'up'),
    { strip: roomStrip(room) },
    moved(room, room.high, 'down'),
    tolerance,
    heldBy([room.low, room.high, room.tolerance]),
  ];
}

/** How far in per cent of the nominal value, rounded toward it. */
function moved({ nominal }: RoomFinding, end: RoomEnd | null, round: 'up' | 'down'): Cell {
  if (!end) return ['any'];
  const percent = shift(nominal, end);
  return { number: `${percent > 0 ? '+' : ''}${fixed(percent, 1, round)}` };
}

const shift = (nominal: number, { value }: RoomEnd): number => (value / nominal - 1) * 100;

function lowest({ low }: RoomFinding, input: Input): Text {
  return low ? [`≥ ${figureText(outward(toSi(low.value, input.unit), input.unit, 'up', 3))}`] : ['any'];
}

function heldBy(ends: readonly ({ readonly check: string } | null)[]): Text {
  const checks = [...new Set(ends.flatMap((end) => end?.check ?? []))];
  return checks.length
    ? joined(
        checks.map((id): Text => [checkLink(id)]),
        ', ',
      )
    : dash;
}

function roomStrip({ input, nominal, low, high }: RoomFinding): Strip {
  const [down, up] = [low && shift(nominal, low), high && shift(nominal, high)];
  const words = (end: number | null) => (end === null ? 'any' : `${fixed(end, 1)} %`);
  return {
    scale: [scale.from, scale.to],
    typical: 0,
    limits: [
      ...(down === null ? [] : [{ at: Math.min(down, 0), forbidden: 'below' as const }]),
      ...(up === null ? [] : [{ at: Math.max(up, 0), forbidden: 'above' as const }]),
    ],
    room: [down === null ? -Infinity : Math.min(down, 0), up === null ? Infinity : Math.max(up, 0)],
    labels: [],
    says: `${input}: may move down by ${words(down)}, up by ${words(up)}.`,
  };
}

/** The reason is the circuit's, so it stands once, at its first part. */
const why = ({ why: reason }: Circuit, first: boolean): Text => (first && reason ? [em(sentence(reason))] : dash);
