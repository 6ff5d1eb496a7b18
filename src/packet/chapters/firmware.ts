import { typeset } from '../../expression/readings/typeset.ts';
import type { Circuit, Result } from '../../spec/board.ts';
import type { Cell, Column, Row, Table } from '../block.ts';
import { aligned, toSi, typedUnitFor } from '../figures.ts';
import { dash, link, math, name } from '../inline.ts';
import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import { symbolLeaves } from '../symbols.ts';
import { chapter } from './chapter.ts';
import { decimal, sans, serif, unit } from './columns.ts';

/** Constants that firmware takes from this packet. */
export function firmware(review: Review): Chapter | undefined {
  const constants = review.board.circuits.flatMap((circuit) =>
    circuit.firmware.map((constant) => ({ circuit, constant })),
  );
  if (!constants.length) return undefined;
  const table: Table = {
    kind: 'table',
    id: 'firmware-constants',
    number: '13.1',
    caption: [
      'Typical is the value to build in; low and high say how far a board may lie from it. Full precision stands in the result file.',
    ],
    columns,
    groups: [{ rows: constants.map(({ circuit, constant }) => row(review, circuit, constant)) }],
    wide: true,
  };
  return chapter('firmware', [table]);
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

function row(review: Review, circuit: Circuit, constant: Result): Row {
  const { worst, nominal } = review.findings.results[constant.id]!;
  const varies = worst.max > worst.min;
  const values = (varies ? [worst.min, nominal, worst.max] : [nominal]).map((x) => toSi(x, constant.unit));
  const shared = typedUnitFor(values, constant.unit);
  const numbers = aligned(values, shared, varies ? ['down', 'nearest', 'up'] : [], 6);
  const cells = numbers.map((number): Cell => ({ number }));
  return {
    id: constant.id,
    cells: [
      [name(constant.symbol)],
      [link(circuit.id, circuit.id)],
      [math(typeset(constant.tree, symbolLeaves(constant.tree, circuit.id)))],
      ...(varies ? cells : [dash, cells[0]!, dash]),
      shared.text ? [shared.text] : dash,
      [constant.says || '–'],
    ],
    ...(review.changes.ids.has(constant.id) ? { changed: true } : {}),
  };
}
