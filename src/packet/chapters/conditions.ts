import type { AssumptionFinding } from '../../analysis/findings.ts';
import { formatTyped } from '../../quantity/figure.ts';
import type { Input } from '../../spec/board.ts';
import type { Block, Cell, Column, Row, Table } from '../block.ts';
import { aligned, figureText, percent, plainTyped, typedUnitFor } from '../figures.ts';
import { dash, em, math, strong } from '../inline.ts';
import { numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { specifiedAs } from '../tolerance.ts';
import { checkLink, idLink, saysOf, usedIn } from '../trail.ts';
import { counted, sentence } from '../words.ts';
import { chapter, section } from './chapter.ts';

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

const left = (head: string, face: 'serif' | 'sans' = 'serif'): Column => ({ head: [head], align: 'left', face });
const decimal = (head: string): Column => ({ head: [head], align: 'decimal' });

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
      left('Symbol'),
      left('What it is'),
      decimal('min'),
      decimal('typ'),
      decimal('max'),
      { head: ['unit'], align: 'unit' },
      left('Used in', 'sans'),
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
    columns: [
      left('Case', 'sans'),
      ...board.conditions.map(({ id }): Column => ({ head: [math(idTex(id))], align: 'left' })),
    ],
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

function derating(review: Review, number: () => string): Section | undefined {
  const { board, trail } = review;
  if (!board.derating.length) return undefined;
  const used = board.derating.filter(
    ({ id }) => (trail.uses.get(id)?.length ?? 0) + (trail.limits.get(id)?.length ?? 0) > 0,
  );
  const idle = board.derating.length - used.length;
  const { policy } = board;
  const intro: Text = policy
    ? [strong(`${policy.title}.`), ` ${sentence(policy.says)}`]
    : ["This board's own table of factors."];
  const rest: Text = idle
    ? [` ${sentence(`${counted(idle, 'factor')} of the policy ${idle === 1 ? 'has' : 'have'} no part on this board`)}`]
    : [];
  const table: Table = {
    kind: 'table',
    id: 'derating',
    number: number(),
    caption: ['Factors that this board uses. A rating times its factor is what the worst case may reach.', ...rest],
    columns: [
      left('Symbol'),
      left('What it asks'),
      decimal('Factor'),
      { head: [], align: 'unit' },
      left('Used in', 'sans'),
    ],
    groups: bySource(used).map(([source, factors]) => ({
      title: source,
      rows: factors.map((input) => deratingRow(review, input)),
    })),
    wide: true,
  };
  return section('conditions', 2, 'derating', 'Derating policy', [
    { kind: 'paragraph', text: intro },
    ...(used.length ? [table] : []),
  ]);
}

function bySource(factors: readonly Input[]): [source: string, Input[]][] {
  const found = new Map<string, Input[]>();
  for (const input of factors) {
    const source = input.from ?? 'No source named';
    found.set(source, [...(found.get(source) ?? []), input]);
  }
  return [...found];
}

function deratingRow(review: Review, input: Input): Row {
  if (input.value.kind === 'expression') throw new Error(`${input.id} is no factor`);
  const { number, unit } = plainTyped(input.value.quantity.typ, input.unit);
  const used = usedIn(review.trail, input.id);
  return {
    id: input.id,
    cells: [[math(idTex(input.id))], [input.says || '–'], { number }, unit ? [unit] : dash, used.length ? used : dash],
  };
}

function assumptions(review: Review, number: () => string): Section | undefined {
  const { findings } = review;
  if (!findings.assumptions.length) return undefined;
  const ranked = findings.assumptions
    .map((one) => ({ one, weight: weightOf(review, one) }))
    .toSorted((a, b) => (b.weight?.share ?? 0) - (a.weight?.share ?? 0));
  const table: Table = {
    kind: 'table',
    id: 'assumptions',
    number: number(),
    caption: [
      'What nobody guarantees: usual values that were taken, and what the specification itself calls typical or assumed; what weighs most first. Weight: share in the worst-case range of the result that the check named limits.',
    ],
    columns: [
      left('Symbol'),
      left('What it is'),
      left('Value'),
      left('Basis', 'sans'),
      decimal('Weight, %'),
      left('In', 'sans'),
      left('Stands at', 'sans'),
    ],
    groups: [{ rows: ranked.map(({ one, weight }) => assumptionRow(review, one, weight)) }],
    wide: true,
  };
  const usual = findings.assumptions.filter(({ basis }) => basis === 'usual value').length;
  const lead: Block = {
    kind: 'paragraph',
    text: [
      `${sentence(`${counted(findings.assumptions.length, 'value')} in this packet ${findings.assumptions.length === 1 ? 'rests' : 'rest'} on nobody's guarantee`)} ${usual ? `${sentence(`${counted(usual, 'is the usual value of a method', 'are usual values of a method')}, taken because the specification is silent`)} ` : ''}Each is closed by a data-sheet limit, a measurement on several boards, or a signed reason.`,
    ],
  };
  return section('conditions', 3, 'assumptions', 'Assumptions not yet guaranteed', [lead, table]);
}

interface Weight {
  readonly share: number;
  readonly check: string;
}

/** Where an assumption weighs most: its largest share in the range of a result that some check limits. */
function weightOf({ findings, trail }: Review, { symbol }: AssumptionFinding): Weight | undefined {
  const shares = Object.entries(findings.results).flatMap(([id, { sensitivity }]): Weight[] => {
    const share = sensitivity.find(({ input }) => input === symbol)?.worst;
    const check = trail.limits.get(id)?.[0];
    return share && check ? [{ share, check: check.id }] : [];
  });
  return shares.toSorted((a, b) => b.share - a.share)[0];
}

function assumptionRow(review: Review, { symbol, basis }: AssumptionFinding, weight: Weight | undefined): Row {
  const input = review.inputs.get(symbol)!;
  return {
    cells: [
      [math(idTex(symbol))],
      [saysOf(review.trail, review.inputs, input) ?? '–'],
      [valueWords(review, input)],
      [em(basis)],
      weight ? { number: percent(weight.share, 1, 'nearest') } : dash,
      weight ? [checkLink(weight.check)] : dash,
      idLink(review.trail, symbol),
    ],
  };
}

/** As it is specified; an expression by its value. */
function valueWords({ typical }: Review, input: Input): string {
  if (input.value.kind !== 'expression') return specifiedAs(input.value);
  return figureText(formatTyped(typical.get(input.id)!, input.unit));
}
