import type { CheckFinding, ResultFinding } from '../../analysis/findings.ts';
import type { Input, Result } from '../../spec/board.ts';
import type { Block, Cell, Row, Table } from '../block.ts';
import { inputsOf, type Reviewed } from '../by-id.ts';
import { type Change, threshold } from '../changes.ts';
import { fixed, percent } from '../figures.ts';
import { dash, joined, link, name, page, strong, verdictMark } from '../inline.ts';
import { marginCell } from '../margins.ts';
import type { Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { rangeText } from '../strips.ts';
import { parted } from '../symbols.ts';
import type { Text } from '../text.ts';
import { specifiedAs } from '../tolerance.ts';
import { checkAnchor, checkLink, idLink } from '../trail.ts';
import { section } from './chapter.ts';
import { decimal, sans, serif } from './columns.ts';

/** Circuits that only one of the two revisions has; their inputs and results are not listed one by one. */
function circuitsMoved(review: Review, previous: Reviewed): Block[] {
  const fresh = review.board.circuits.filter(({ id }) => isOfNewCircuit(review, id));
  const gone = previous.board.circuits.filter(({ id }) => isOfGoneCircuit(review, id));
  const moved: Text[] = [
    ...fresh.map(({ id, title }): Text => [link(id, id), ` (new: ${review.trail.sections.get(id)} ${title})`]),
    ...gone.map(({ id, title }): Text => [name(id), ` (gone: ${title})`]),
  ];
  return moved.length ? [{ kind: 'paragraph', text: [strong('Circuits: '), ...joined(moved, ', '), '.'] }] : [];
}

const circuitOf = (id: string): string => id.split('.')[0]!;
const isOfNewCircuit = ({ circuits, previous }: Review, id: string): boolean =>
  circuits.has(circuitOf(id)) && !previous!.board.circuits.some((circuit) => circuit.id === circuitOf(id));
const isOfGoneCircuit = ({ circuits, previous }: Review, id: string): boolean =>
  !circuits.has(circuitOf(id)) && previous!.board.circuits.some((circuit) => circuit.id === circuitOf(id));

export function changedInputs(review: Review, previous: Reviewed, number: () => string): Section | undefined {
  const { changes } = review;
  if (!changes.inputs.length) return undefined;
  const before = inputsOf(previous.board);
  const known = changes.inputs.filter(({ id }) => !isOfNewCircuit(review, id) && !isOfGoneCircuit(review, id));
  const table: Table = {
    kind: 'table',
    id: 'changed-inputs',
    number: number(),
    caption: ['Inputs and parts that were given differently, came or went.'],
    columns: [
      sans('Input'),
      sans('Part'),
      serif('What it is'),
      serif(`Revision ${previous.board.identity.mark}`),
      serif(`Revision ${review.board.identity.mark}`),
    ],
    groups: [{ rows: known.map((change) => inputRow(review, change, before)) }],
    wide: true,
  };
  return section('changes', 1, 'inputs', 'Inputs and parts', [
    ...(known.length ? [table] : []),
    ...circuitsMoved(review, previous),
  ]);
}

function inputRow(review: Review, { id, before, after }: Change<Input>, old: ReadonlyMap<string, Input>): Row {
  const known = after ?? before ?? old.get(id)!;
  const { circuit } = parted(id);
  const where: Text = after && circuit !== 'derating' ? idLink(review.trail, id) : [name(id)];
  return {
    cells: [
      where,
      [known.refs ?? '–'],
      [known.says ?? '–'],
      [before ? written(before) : 'not there'],
      [after ? written(after) : 'gone'],
    ],
  };
}

function written(input: Input): string {
  const value = input.value.kind === 'expression' ? input.value.text : specifiedAs(input.value);
  return input.basis === 'assumed' || input.basis === 'typical' || input.basis === 'measured'
    ? `${value} (${input.basis})`
    : value;
}

export function changedChecks(review: Review, number: () => string): Section | undefined {
  const { changes } = review;
  if (!changes.checks.length) return undefined;
  const sorted = changes.checks.toSorted(
    (a, b) => Number(flips(b)) - Number(flips(a)) || rank(review, a) - rank(review, b),
  );
  const table: Table = {
    kind: 'table',
    id: 'changed-checks',
    number: number(),
    caption: ['Checks whose verdict changed, then those whose margin moved by more than half a per cent of the limit.'],
    columns: [
      sans('Check'),
      decimal('Margin before, %'),
      sans('Verdict'),
      decimal('now, %'),
      sans('Verdict'),
      decimal('Moved, %'),
      sans('Page'),
    ],
    groups: [{ rows: sorted.map(checkRow) }],
    wide: true,
  };
  return section('changes', 2, 'checks', 'Verdicts and margins', [table]);
}

const flips = ({ before, after }: Change<CheckFinding>): boolean => before?.verdict !== after?.verdict;
const rank = ({ findings }: Review, { id }: Change<CheckFinding>): number => findings.ranking.indexOf(id);

function checkRow({ id, before, after }: Change<CheckFinding>): Row {
  const side = (check: CheckFinding | undefined, none: string): [Cell, Cell] =>
    check ? [marginCell(check), [verdictMark(check.verdict, { deviation: check.deviation })]] : [dash, [none]];
  const moved: Cell =
    before?.margin != null && after?.margin != null ? { number: signed((after.margin - before.margin) * 100) } : dash;
  return {
    cells: [
      [after ? checkLink(id) : name(id)],
      ...side(before, 'not there'),
      ...side(after, 'gone'),
      moved,
      after ? [page(checkAnchor(id))] : dash,
    ],
  };
}

export function changedResults(review: Review, previous: Reviewed, number: () => string): Section | undefined {
  const { changes } = review;
  const kept = changes.results.filter(({ before, after }) => before && after);
  const others = changes.results.filter(
    ({ id, before, after }) => (!before && !isOfNewCircuit(review, id)) || (!after && !isOfGoneCircuit(review, id)),
  );
  if (!kept.length && !others.length) return undefined;
  const then = new Map(
    previous.board.circuits.flatMap((circuit) => circuit.results.map((result) => [result.id, result] as const)),
  );
  const table: Table = {
    kind: 'table',
    id: 'changed-results',
    number: number(),
    caption: [
      `Results of which the typical value or an end of the worst case moved by more than ${percent(threshold, 0, 'nearest')}\u00a0%.`,
    ],
    columns: [
      sans('Result'),
      serif('What it is'),
      serif(`Worst case, revision ${previous.board.identity.mark}`),
      serif(`Revision ${review.board.identity.mark}`),
      decimal('Typical moved, %'),
    ],
    groups: [{ rows: kept.map((change) => resultRow(review, then, change)) }],
    wide: true,
  };
  const list: Block = {
    kind: 'paragraph',
    text: [
      strong('Came or went: '),
      ...joined(
        others.map(({ id, after }): Text => (after ? [link(id, id), ' (new)'] : [name(id), ' (gone)'])),
        ', ',
      ),
      '.',
    ],
  };
  return section('changes', 3, 'results', 'Results', [
    ...(kept.length ? [table] : []),
    ...(others.length ? [list] : []),
  ]);
}

function resultRow(
  review: Review,
  then: ReadonlyMap<string, Result>,
  { id, before, after }: Change<ResultFinding>,
): Row {
  const result = review.results.get(id)!;
  const range = ({ worst }: ResultFinding, unit: Result['unit']): Text => [rangeText(worst, unit)];
  const old = then.get(id)?.unit ?? result.unit;
  const moved =
    before!.nominal === 0 || old.offset !== 0 ? dash : { number: signed((after!.nominal / before!.nominal - 1) * 100) };
  return {
    cells: [idLink(review.trail, id), [result.says || '–'], range(before!, old), range(after!, result.unit), moved],
  };
}

const signed = (value: number): string => `${value > 0 ? '+' : ''}${fixed(value, 1)}`;
