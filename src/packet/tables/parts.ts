import type { Findings, RoomFinding } from '../../analysis/findings.ts';
import type { Board } from '../../spec/board.ts';
import type { CsvCell } from '../csv.ts';

/** What is bought: designators, values and ratings with their room and the check that stops it. */
export function partRows({ circuits }: Board, { room }: Findings): CsvCell[][] {
  const rooms = new Map(room.map((one) => [one.input, one]));
  const parts = circuits.flatMap((circuit) =>
    circuit.inputs
      .filter(
        ({ refs, part, rating, value }) =>
          refs !== undefined || ((part !== undefined || rating) && (value.kind === 'part' || value.kind === 'exact')),
      )
      .map((input) => ({ circuit, input })),
  );
  return [
    [
      'designator',
      'circuit',
      'count',
      'symbol',
      'what it is',
      'value',
      'basis',
      'origin',
      'why',
      'rating',
      'unit of room',
      'nominal',
      'may fall to',
      'stopped by',
      'may rise to',
      'stopped by',
      'tolerance may widen times',
      'stopped by',
    ],
    ...parts.map(({ circuit, input }) => [
      input.refs ?? null,
      circuit.id,
      circuit.count,
      input.symbol,
      input.says ?? null,
      input.value.kind === 'expression' ? input.value.text : input.value.quantity.text,
      input.basis ?? null,
      input.from ?? null,
      circuit.why ?? null,
      input.rating ? 'yes' : 'no',
      ...roomCells(rooms.get(input.id)),
    ]),
  ];
}

function roomCells(room: RoomFinding | undefined): CsvCell[] {
  if (!room) return [null, null, null, null, null, null, null, null];
  const { unit, nominal, low, high, tolerance } = room;
  return [
    unit,
    nominal,
    low?.value ?? null,
    low?.check ?? null,
    high?.value ?? null,
    high?.check ?? null,
    tolerance?.factor ?? null,
    tolerance?.check ?? null,
  ];
}
