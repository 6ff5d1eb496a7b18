import type { Input } from '../../spec/board.ts';
import type { Block, Cell, Column, Row, Table } from '../block.ts';
import { aligned, figureText, plainTyped, typedUnitFor } from '../figures.ts';
import { dash, math } from '../inline.ts';
import { numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { saysOf, usedIn } from '../trail.ts';
import { assumptions } from './assumptions.ts';
import { chapter, section } from './chapter.ts';
import { decimal, sans, serif, unit } from './columns.ts';
import { derating } from './derating.ts';

/** What every board must endure, which factors ratings were cut by, and what nobody guarantees. */
export function conditions(review: Review): Chapter | undefined {
  const numbers = numbering(6);
  const sections = [
    endured(review, numbers.table),
    derating(review, numbers.table),
    assumptions(review, numbers.table),
  ].filter((one) => one !== undefined);
  return sections.length ? chapter('conditions', [], sections) : undefined;
}

function endured(review: Review, number: () => string): Section | undefined {
  const { board } = review;
  if (!board.conditions.length) return undefined;
  const cases = board.cases;
  const table: Table = {
    kind: 'table',
    id: 'conditions',
    number: number(),
    caption: [
      `Every board must hold every check anywhere in these ranges${cases.length ? ', taken case by case' : ''}.`,
    ],
    columns: [
      serif('Symbol'),
      serif('What it is'),
      decimal('min'),
      decimal('typ'),
      decimal('max'),
      unit('unit'),
      sans('Used in'),
    ],
    groups: [{ rows: board.conditions.map((input) => conditionRow(review, input)) }],
    wide: true,
  };
  const named = cases.length ? [casesTable(review, number())] : [];
  const narrower: Block[] = cases.length
    ? [
        {
          kind: 'paragraph',
          text: [
            'Worst cases are sought over these cases; a condition that a case does not name keeps its full range.',
          ],
        },
      ]
    : [];
  return section('conditions', 1, 'endured', 'Conditions and named cases', [table, ...narrower, ...named]);
}

function conditionRow(review: Review, input: Input): Row {
  if (input.value.kind === 'expression') throw new Error(`${input.id} is no condition`);
  const { min, typ, max } = input.value.quantity;
  const { text: unit, ...printed } = typedUnitFor([min, typ, max], input.unit);
  const numbers = aligned([min, typ, max], { text: unit, ...printed });
  const used = usedIn(review.trail, input.id);
  return {
    id: input.id,
    cells: [
      [math(idTex(input.id))],
      [saysOf(review.trail, review.inputs, input) ?? '–'],
      ...numbers.map((number): Cell => ({ number })),
      unit ? [unit] : dash,
      used.length ? used : dash,
    ],
    ...(review.changes.ids.has(input.id) ? { changed: true } : {}),
  };
}

function casesTable({ board }: Review, number: string): Table {
  const range = (condition: Input, min: number, typ: number, max: number): Text => {
    const [low, usual, high] = [min, typ, max].map((si) => plainTyped(si, condition.unit)) as [
      ReturnType<typeof plainTyped>,
      ReturnType<typeof plainTyped>,
      ReturnType<typeof plainTyped>,
    ];
    return [`${low.number} to ${figureText(high)}, typ ${usual.number}`];
  };
  return {
    kind: 'table',
    id: 'cases',
    number,
    caption: ['Named operating cases.'],
    columns: [sans('Case'), ...board.conditions.map(({ id }): Column => ({ head: [math(idTex(id))], align: 'left' }))],
    groups: [
      {
        rows: board.cases.map(({ name, ranges }) => ({
          id: `case-${name}`,
          cells: [
            [name],
            ...board.conditions.map((condition): Text => {
              const quantity = ranges.get(condition.id);
              return quantity ? range(condition, quantity.min, quantity.typ, quantity.max) : ['full range'];
            }),
          ],
        })),
      },
    ],
    wide: true,
  };
}
