import { typeset } from '../../expression/readings/typeset.ts';
import type { Circuit, Input } from '../../spec/board.ts';
import { mentioned } from '../../spec/names.ts';
import type { Cell, Column, Row, RowGroup, Table } from '../block.ts';
import { correlationText } from '../correlation.ts';
import { aligned, toSi, typedUnitFor } from '../figures.ts';
import { dash, em, math } from '../inline.ts';
import type { Numbering } from '../numbering.ts';
import type { Review } from '../review.ts';
import { idTex, symbolLeaves } from '../symbols.ts';
import type { Text } from '../text.ts';
import { toleranceText } from '../tolerance.ts';
import { idLink, saysOf, usedIn } from '../trail.ts';
import { decimal, sans, serif, unit, wide } from './columns.ts';

/** What goes into a circuit, sorted by what it is: a condition, a value of another circuit, a part, a rating, a fixed value. */
export function inputsTable(review: Review, circuit: Circuit, numbers: Numbering): Table | undefined {
  const groups = groupsOf(review, circuit).filter(({ rows }) => rows.length > 0);
  if (!groups.length) return undefined;
  return {
    kind: 'table',
    id: `inputs-${circuit.id}`,
    number: numbers.table(),
    caption: [
      'What goes in. A condition must be endured over its whole range; a part varies from board to board, its min and max being those of a new one at 25\u00a0°C.',
    ],
    columns,
    groups,
    wide: true,
  };
}

const columns: readonly Column[] = [
  wide(serif('Symbol'), 0.075),
  wide(sans('Part'), 0.045),
  wide(serif('What it is'), 0.2),
  wide(decimal('min'), 0.07),
  wide(decimal('typ'), 0.07),
  wide(decimal('max'), 0.07),
  wide(unit('unit'), 0.055),
  wide(sans('Tolerance'), 0.085),
  wide(sans('Basis'), 0.097),
  wide(sans('Where it comes from'), 0.125),
  wide(sans('Used in'), 0.108),
];

function groupsOf(review: Review, circuit: Circuit): RowGroup[] {
  const { inputs } = circuit;
  const own = (wanted: (input: Input) => boolean): Row[] =>
    inputs.filter(wanted).map((input) => row(review, input, true));
  const shared = conditionsUsed(review, circuit).map((input) => row(review, input, false));
  return [
    { title: 'Conditions', rows: [...shared, ...own(({ value }) => value.kind === 'condition')] },
    { title: 'From elsewhere on the board', rows: own(({ value }) => value.kind === 'expression') },
    { title: 'Parts', rows: own(({ value, rating }) => value.kind === 'part' && !rating) },
    {
      title: 'Ratings',
      rows: own(({ value, rating }) => rating && value.kind !== 'expression' && value.kind !== 'condition'),
    },
    { title: 'Fixed values', rows: own(({ value, rating }) => value.kind === 'exact' && !rating) },
  ];
}

/** Conditions of the board that the circuit's equations, checks or temperature name themselves. */
function conditionsUsed({ board }: Review, { inputs, results, checks, validity, temperature }: Circuit): Input[] {
  const used = new Set<string>();
  for (const { tree } of results) mentioned(tree, used);
  for (const { left, right } of [...checks, ...validity]) mentioned(left, mentioned(right, used));
  if (temperature) mentioned(temperature, used);
  return board.conditions.filter(({ id }) => used.has(id) && !inputs.some((input) => input.id === id));
}

function row(review: Review, input: Input, own: boolean): Row {
  const { numbers, unit } = rangeCells(review, input);
  const basis = input.basis;
  return {
    ...(own ? { id: input.id } : {}),
    cells: [
      [math(idTex(input.id))],
      input.refs ? [input.refs] : dash,
      [saysOf(review.trail, review.inputs, input) ?? '–'],
      ...numbers,
      unit ? [unit] : dash,
      [toleranceText(input.value) + correlationText(review.board, input.id)],
      basis ? [basis === 'typical' || basis === 'assumed' ? em(basis) : basis] : dash,
      originOf(review, input),
      used(review, input),
    ],
    ...(review.changes.ids.has(input.id) ? { changed: true } : {}),
  };
}

function used({ trail }: Review, { id }: Input): Text {
  const text = usedIn(trail, id);
  return text.length ? text : dash;
}

/** Where a value comes from: a link to what it follows, the origin that the spec names, or the spec itself. */
export function originOf(review: Review, input: Input): Text {
  const { value } = input;
  if (value.kind !== 'expression') {
    if (!input.id.includes('.')) return idLink(review.trail, input.id);
    return [input.from ?? 'the specification'];
  }
  if (value.tree.kind === 'symbol') return idLink(review.trail, value.tree.name);
  return [math(typeset(value.tree, symbolLeaves(value.tree, undefined)))];
}

/** Least, typical and greatest value; a dash where a limit is not known, as for an expression of several others. */
function rangeCells(review: Review, input: Input): { numbers: Cell[]; unit: string } {
  const typ = review.typical.get(input.id)!;
  const range = rangeOf(review, input.id);
  if (!range || range.min === range.max) {
    const unit = typedUnitFor([typ], input.unit);
    return { numbers: [dash, { number: aligned([typ], unit)[0]! }, dash], unit: unit.text };
  }
  const values = [range.min, typ, range.max];
  const unit = typedUnitFor(values, input.unit);
  return { numbers: aligned(values, unit, ['down', 'nearest', 'up']).map((number) => ({ number })), unit: unit.text };
}

/** Range of an input or result, SI base units, followed through plain references. */
export function rangeOf(review: Review, id: string): { min: number; max: number } | undefined {
  const found = review.findings.results[id];
  if (found) {
    const { unit } = review.results.get(id)!;
    return { min: toSi(found.worst.min, unit), max: toSi(found.worst.max, unit) };
  }
  const value = review.inputs.get(id)?.value;
  if (!value) return undefined;
  if (value.kind !== 'expression') return value.quantity;
  return value.tree.kind === 'symbol' ? rangeOf(review, value.tree.name) : undefined;
}
