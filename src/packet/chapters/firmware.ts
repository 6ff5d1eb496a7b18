import { typeset } from '../../expression/readings/typeset.ts';
import type { Tree } from '../../expression/tree.ts';
import type { Circuit, Order, Result } from '../../spec/board.ts';
import type { Block, Cell, Column, Row, Table } from '../block.ts';
import { constantsOf } from '../constants.ts';
import { aligned, toSi, typedUnitFor } from '../figures.ts';
import { dash, em, link, math, name, pageNumber, verdictMark } from '../inline.ts';
import { marginCell, slackFigure } from '../margins.ts';
import { numbering } from '../numbering.ts';
import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import { rangeText } from '../strips.ts';
import { symbolLeaves } from '../symbols.ts';
import type { Text } from '../text.ts';
import { checkAnchor, checkLink } from '../trail.ts';
import { sentence } from '../words.ts';
import { chapter } from './chapter.ts';
import { decimal, folio, right, sans, serif, unit } from './columns.ts';

/** Constants that firmware takes from this packet, and the order in which thresholds stand. */
export function firmware(review: Review): Chapter | undefined {
  const { table } = numbering(13);
  const constants = constantsTable(review, table);
  const orders = review.board.circuits.flatMap((circuit) => circuit.orders.map((order) => ({ circuit, order })));
  const blocks: Block[] = [
    ...(constants ? [files(review), constants] : []),
    ...(orders.length ? [ordersTable(review, orders, table)] : []),
  ];
  return blocks.length ? chapter('firmware', blocks) : undefined;
}

function files({ findings }: Review): Block {
  return {
    kind: 'paragraph',
    text: [
      name('constants.h'),
      ' and ',
      name('constants.json'),
      ', beside the pages of this packet, hold these constants at full precision with units and ranges, and the digest ',
      name(findings.inputs_sha256.slice(0, 12)),
      ' of the inputs: firmware that reports it can be told apart from one that was built on other numbers.',
    ],
  };
}

function constantsTable(review: Review, number: () => string): Table | undefined {
  const constants = constantsOf(review.board, review.findings);
  if (!constants.length) return undefined;
  return {
    kind: 'table',
    id: 'firmware-constants',
    number: number(),
    caption: [
      'Typical is the value to build in; low and high say how far a board may lie from it. A name that two circuits use has its circuit before it.',
    ],
    columns,
    groups: [
      {
        rows: constants.map(({ name: called, circuit, id, says }) =>
          row(review, review.circuits.get(circuit)!, review.results.get(id)!, called, says),
        ),
      },
    ],
    wide: true,
  };
}

const columns: readonly Column[] = [
  sans('Constant'),
  sans('Circuit'),
  serif('Is'),
  decimal('Low'),
  decimal('Typical'),
  decimal('High'),
  unit('unit'),
  serif('What it is'),
];

function row(review: Review, circuit: Circuit, constant: Result, called: string, says: string): Row {
  const { worst, nominal } = review.findings.results[constant.id]!;
  const varies = worst.max > worst.min;
  const values = (varies ? [worst.min, nominal, worst.max] : [nominal]).map((x) => toSi(x, constant.unit));
  const shared = typedUnitFor(values, constant.unit);
  const numbers = aligned(values, shared, varies ? ['down', 'nearest', 'up'] : [], 6);
  const cells = numbers.map((number): Cell => ({ number }));
  return {
    id: constant.id,
    cells: [
      [name(called)],
      [link(circuit.id, circuit.id)],
      [math(typeset(constant.tree, symbolLeaves(constant.tree, circuit.id)))],
      ...(varies ? cells : [dash, cells[0]!, dash]),
      shared.text ? [shared.text] : dash,
      [says || '–'],
    ],
    ...(review.changes.ids.has(constant.id) ? { changed: true } : {}),
  };
}

/** Thresholds from the lowest up, each with what keeps it below the next. */
function ordersTable(
  review: Review,
  orders: readonly { readonly circuit: Circuit; readonly order: Order }[],
  number: () => string,
): Table {
  return {
    kind: 'table',
    id: 'threshold-order',
    number: number(),
    caption: [
      'Thresholds that must keep their order on every board, lowest first, with their worst-case ranges. The gap to the next one is what is left at the worst corner of both.',
    ],
    columns: [
      serif('Threshold'),
      serif('Worst case'),
      sans('Checked as'),
      right('Gap to the next'),
      decimal('Margin, %'),
      sans('Verdict'),
      folio('Page'),
    ],
    groups: orders.map(({ circuit, order }) => ({
      title: `${circuit.id}, ${order.name}: ${sentence(order.because)}`,
      rows: order.checks.flatMap((id, i) => thresholdRows(review, circuit, id, i === order.checks.length - 1)),
    })),
    wide: true,
  };
}

function thresholdRows(review: Review, circuit: Circuit, id: string, last: boolean): Row[] {
  const check = review.checks.get(id)!;
  const finding = review.judged.get(id)!;
  const slack = finding.worst_slack === null ? undefined : slackFigure(finding);
  const below: Row = {
    cells: [
      threshold(circuit, check.left),
      range(review, check.left),
      [checkLink(id)],
      slack ? [`${slack.number}\u00a0${slack.unit}`] : dash,
      marginCell(finding),
      [verdictMark(finding.verdict, { deviation: finding.deviation })],
      [pageNumber(checkAnchor(id))],
    ],
  };
  const top: Row = {
    cells: [threshold(circuit, check.right), range(review, check.right), dash, dash, dash, dash, dash],
  };
  return last ? [below, top] : [below];
}

const threshold = (circuit: Circuit, tree: Tree): Text => [
  math(typeset(tree, symbolLeaves(tree, circuit.id))),
  ...(tree.kind === 'symbol' ? [' ', em(tree.name)] : []),
];

/** Only of what was searched: the tolerance of a part is not yet its worst case. */
function range(review: Review, tree: Tree): Text {
  if (tree.kind !== 'symbol') return dash;
  const found = review.findings.results[tree.name];
  const result = review.results.get(tree.name);
  if (found && result) return [rangeText(found.worst, result.unit)];
  const input = review.inputs.get(tree.name);
  if (input?.value.kind === 'expression') return range(review, input.value.tree);
  return input && input.value.kind !== 'part' ? [rangeText(review.findings.inputs[input.id]!, input.unit)] : dash;
}
