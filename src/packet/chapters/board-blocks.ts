import type { Board, Circuit } from '../../spec/board.ts';
import type { Block, Row, Table } from '../block.ts';
import type { DrawingLine } from '../drawing.ts';
import type { Exchange } from '../exchange.ts';
import { joined, link } from '../inline.ts';
import type { Numbering } from '../numbering.ts';
import { type Reference, referencesOf } from '../references.ts';
import type { Review } from '../review.ts';
import { symbolRuns } from '../symbol-runs.ts';
import { parted } from '../symbols.ts';
import type { Text } from '../text.ts';
import { capital, counted } from '../words.ts';
import { sans } from './columns.ts';

/** Places in the order in which the current and then the signals pass them. */
const order = [
  'source',
  'bus',
  'stage',
  'motor',
  'drive',
  'sensing',
  'supply',
  'controller',
  'interface',
  'copper',
  'heat',
];
/** A board of so many circuits shows each as a block of its own; a larger one shows its places. */
const most = 12;

/** The board as blocks with what they hand each other, and the same as a table; nothing where no circuit builds on another. */
export function boardBlocks(review: Review, numbers: Numbering): Block[] {
  const references = referencesOf(review.board);
  if (!references.length) return [];
  const blocks = blocksOf(review.board);
  const blockOf = new Map(blocks.flatMap(({ circuits }, i) => circuits.map(({ id }) => [id, i] as const)));
  return [figure(blocks, references, blockOf, numbers), table(review, references, numbers)];
}

interface BoardBlock {
  readonly name: readonly string[];
  readonly circuits: readonly Circuit[];
}

function blocksOf(board: Board): BoardBlock[] {
  const ranks = ranksOf(board);
  const placed = board.circuits.toSorted((a, b) => ranks.get(a.id)! - ranks.get(b.id)!);
  if (placed.length <= most) return placed.map((circuit) => ({ name: split(circuit.id), circuits: [circuit] }));
  const places = [...new Set(placed.map(placeOf))];
  return places.map((place) => {
    const own = placed.filter((circuit) => placeOf(circuit) === place);
    return { name: [capital(place), counted(own.length, 'circuit')], circuits: own };
  });
}

/** Equations written in place belong to no folder of the handbook. */
const inPlace = 'in place';
const placeOf = ({ method }: Circuit): string => method?.place ?? inPlace;

/** Rank of each circuit on the diagonal; one written in place comes behind the last of those it takes from. */
function ranksOf(board: Board): Map<string, number> {
  const known = new Map(board.circuits.map((circuit) => [circuit.id, order.indexOf(placeOf(circuit))]));
  const references = referencesOf(board);
  return new Map(
    [...known].map(([id, rank]) => {
      const givers = references.filter(({ to }) => to === id).map(({ from }) => known.get(from)!);
      return [id, rank < 0 ? Math.max(0, ...givers) + 0.5 : rank];
    }),
  );
}

/** A long name on two lines: `gate_`, `resistor`. */
function split(id: string): string[] {
  const cut = id.indexOf('_', 3);
  return id.length > 8 && cut > 0 ? [id.slice(0, cut + 1), id.slice(cut + 1)] : [id];
}

function figure(
  blocks: readonly BoardBlock[],
  references: readonly Reference[],
  blockOf: ReadonlyMap<string, number>,
  numbers: Numbering,
): Exchange {
  const cells = new Map<string, string[]>();
  for (const { from, to, quantity } of references) {
    const [i, j] = [blockOf.get(from)!, blockOf.get(to)!];
    const key = `${i} ${j}`;
    const known = cells.get(key) ?? [];
    if (i !== j && !known.includes(quantity)) cells.set(key, [...known, quantity]);
  }
  const given = [...cells].map(([key, quantities]) => {
    const [from, to] = key.split(' ').map(Number) as [number, number];
    return { from, to, lines: linesOf(quantities), quantities };
  });
  const names = blocks.map(({ name }) => name.join(name.length > 1 && name[0]!.endsWith('_') ? '' : ', '));
  const said = given.map(({ from, to, quantities }) => `${names[from]} gives ${names[to]} ${quantities.join(', ')}`);
  return {
    kind: 'exchange',
    id: 'board-blocks',
    number: numbers.figure(),
    caption: [
      'The board as blocks. What one block gives another stands in the row of the giver and the column of the taker: to the right it goes onward, to the left it comes back. Table 7.1 lists every reference.',
    ],
    alt: `Blocks of the board on a diagonal, with what they hand each other. ${said.join('; ')}.`,
    blocks: blocks.map(({ name }) => name),
    given: given.map(({ from, to, lines }) => ({ from, to, lines })),
  };
}

/** Two symbols and how many more; three where that is all. */
function linesOf(quantities: readonly string[]): DrawingLine[] {
  const symbols = [...new Set(quantities.map((id) => parted(id).symbol))];
  const shown = symbols.length > 3 ? symbols.slice(0, 2) : symbols;
  const more = symbols.length - shown.length;
  return [
    ...shown.map((symbol) => symbolRuns(symbol)),
    ...(more ? [[{ text: `and ${more} more`, face: 'range' as const }]] : []),
  ];
}

function table({ board }: Review, references: readonly Reference[], numbers: Numbering): Table {
  const rows = board.circuits.flatMap(({ id }): Row[] => {
    const own = references.filter(({ to }) => to === id);
    if (!own.length) return [];
    const taken = own.map(({ quantity }): Text => [link(quantity, quantity)]);
    const users = [...new Set(references.filter(({ from }) => from === id).map(({ to }) => to))];
    const fed = users.map((user): Text => [link(user, user)]);
    return [{ cells: [[link(id, id)], joined(taken, ', '), fed.length ? joined(fed, ', ') : ['–']] }];
  });
  return {
    kind: 'table',
    id: 'board-references',
    number: numbers.table(),
    caption: ['What each circuit takes from others, and which circuits build on it.'],
    columns: [sans('Circuit'), sans('Takes'), sans('Feeds')],
    groups: [{ rows }],
    wide: true,
  };
}
