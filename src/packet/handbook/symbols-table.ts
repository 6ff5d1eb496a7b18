import { parseExpression } from '../../expression/parse.ts';
import { typeset } from '../../expression/readings/typeset.ts';
import { looksLikeQuantity } from '../../quantity/looks-like-quantity.ts';
import { parseQuantity } from '../../quantity/parse-quantity.ts';
import { printQuantity } from '../../quantity/print-quantity.ts';
import type { Input } from '../../spec/board.ts';
import type { Row, Table } from '../block.ts';
import { decimal, sans, serif, unit, wide } from '../chapters/columns.ts';
import { plainTyped, typedUnitFor } from '../figures.ts';
import { dash, math } from '../inline.ts';
import { idTex, symbolLeaves } from '../symbols.ts';
import type { Text } from '../text.ts';
import { usedIn } from '../trail.ts';
import { localText, type Worked } from './worked.ts';

const columns = [
  wide(serif('Symbol'), 0.08),
  wide(serif('What it is'), 0.29),
  wide(serif('Usual value'), 0.15),
  wide(sans('Where that comes from'), 0.19),
  wide(decimal('Example'), 0.09),
  wide(unit('unit'), 0.07),
  wide(sans('Used in'), 0.13),
];

/** What a method is given: what each symbol stands for, its unit, its usual value, and the value of the example. */
export function symbolsTable(worked: Worked): Table {
  const { inputs } = worked.circuit;
  const rows = (wanted: (input: Input) => boolean): Row[] => inputs.filter(wanted).map((input) => row(worked, input));
  return {
    kind: 'table',
    id: 'table-symbols',
    number: '1',
    caption: [
      'What goes in. A value left out of a spec takes the usual one, and the packet lists it under assumptions.',
    ],
    columns,
    groups: [
      { title: 'Of the board', rows: rows(({ part, rating }) => !part && !rating) },
      { title: 'Of parts', rows: rows(({ part, rating }) => part !== undefined && !rating) },
      { title: 'Ratings', rows: rows(({ rating }) => rating) },
    ].filter((group) => group.rows.length > 0),
    wide: true,
  };
}

function row(worked: Worked, input: Input): Row {
  const { says, from, usual: text } = worked.method.symbols[input.symbol]!;
  const si = worked.values.get(input.id)!;
  const { number, unit: printed } = plainTyped(si, typedUnitFor([si], input.unit));
  const used = localText(usedIn(worked.trail, input.id));
  return {
    id: input.symbol,
    cells: [
      [math(idTex(input.id))],
      [says],
      usual(text),
      from ? [from] : dash,
      { number },
      printed ? [printed] : dash,
      used.length ? used : dash,
    ],
  };
}

/** The usual value as a spec would have it, or as an equation where it follows from others. */
function usual(text: string | undefined): Text {
  if (text === undefined) return dash;
  if (looksLikeQuantity(text)) return [printQuantity(parseQuantity(text))];
  const tree = parseExpression(text);
  return [math(typeset(tree, symbolLeaves(tree, undefined)))];
}
