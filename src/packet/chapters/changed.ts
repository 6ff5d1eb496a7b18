import type { CheckFinding, ResultFinding } from '../../analysis/findings.ts';
import type { Input, Result } from '../../spec/board.ts';
import type { Block, Cell, Column, Row, Table } from '../block.ts';
import { inputsOf, type Reviewed } from '../by-id.ts';
import { type Change, threshold } from '../changes.ts';
import { chapterHeads } from '../chapter-list.ts';
import { fixed, percent } from '../figures.ts';
import { dash, joined, link, name, page, strong, verdictMark } from '../inline.ts';
import { marginCell } from '../margins.ts';
import { numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { rangeText } from '../strips.ts';
import { parted } from '../symbols.ts';
import type { Text } from '../text.ts';
import { specifiedAs } from '../tolerance.ts';
import { checkAnchor, checkLink, idLink } from '../trail.ts';
import { counted, sentence } from '../words.ts';
import { chapter, section } from './chapter.ts';

/** What moved since the revision that this one replaces, and what must be looked at again. */
export function changed(review: Review): Chapter | undefined {
  const { previous } = review;
  if (!previous) return undefined;
  const numbers = numbering(chapterHeads.changes.number);
  const sections = [
    inputs(review, previous, numbers.table),
    checks(review, numbers.table),
    results(review, previous, numbers.table),
  ].filter((one) => one !== undefined);
  const title = `${chapterHeads.changes.title} since revision ${previous.board.identity.mark}`;
  return chapter('changes', [lead(review, previous)], sections, { title });
}

function lead({ changes, findings }: Review, previous: Reviewed): Block {
  const mark = previous.board.identity.mark;
  const flipped = changes.checks.filter(({ before, after }) => before && after && before.verdict !== after.verdict);
  const better = flipped
    .filter(({ after }) => after!.verdict === 'pass' || after!.verdict === 'marginal')
    .filter(({ before }) => before!.verdict === 'fail');
  const worse = flipped.filter(({ before, after }) => after!.verdict === 'fail' && before!.verdict !== 'fail');
  const nothing = !changes.inputs.length && !changes.checks.length && !changes.results.length;
  if (nothing)
    return {
      kind: 'paragraph',
      lead: true,
      text: [`Nothing differs from revision ${mark} in what was given or found.`],
    };
  const names = (list: readonly Change<CheckFinding>[]): Text =>
    joined(
      list.map(({ id }): Text => [checkLink(id)]),
      ', ',
    );
  const text: Text = [
    `Revision ${mark} was `,
    verdictMark(previous.findings.verdict),
    '; this one is ',
    verdictMark(findings.verdict),
    `. ${sentence(`${counted(changes.inputs.length, 'input')} changed, came or went`)} `,
    ...(better.length
      ? [
          `${sentence(`${counted(better.length, 'check')} that failed ${better.length === 1 ? 'holds' : 'hold'} now`).slice(0, -1)}: `,
          ...names(better),
          '. ',
        ]
      : []),
    ...(worse.length
      ? [
          `${sentence(`${counted(worse.length, 'check')} that held ${worse.length === 1 ? 'fails' : 'fail'} now`).slice(0, -1)}: `,
          ...names(worse),
          '. ',
        ]
      : ['No check that held fails now. ']),
    `Signatures under revision ${mark} do not cover what stands below; its tests of the results in table 5.3 are to be made again. A bar in the left margin marks these lines throughout.`,
  ];
  return { kind: 'paragraph', lead: true, text };
}

/** Circuits that only one of the two revisions has; their inputs and results are not listed one by one. */
function circuitsMoved(review: Review, previous: Reviewed): Block[] {
  const fresh = review.board.circuits.filter(({ id }) => isOfNewCircuit(review, id));
  const gone = previous.board.circuits.filter(({ id }) => isOfGoneCircuit(review, id));
  const text: Text = [
    ...(fresh.length
      ? [
          'New: ',
          ...joined(
            fresh.map(({ id, title }): Text => [link(id, id), ` (${review.trail.sections.get(id)} ${title})`]),
            ', ',
          ),
          '. ',
        ]
      : []),
    ...(gone.length
      ? [
          'Gone: ',
          ...joined(
            gone.map(({ id, title }): Text => [name(id), ` (${title})`]),
            ', ',
          ),
          '.',
        ]
      : []),
  ];
  return text.length ? [{ kind: 'paragraph', text }] : [];
}

const circuitOf = (id: string): string => id.split('.')[0]!;
const isOfNewCircuit = ({ circuits, previous }: Review, id: string): boolean =>
  circuits.has(circuitOf(id)) && !previous!.board.circuits.some((circuit) => circuit.id === circuitOf(id));
const isOfGoneCircuit = ({ circuits, previous }: Review, id: string): boolean =>
  !circuits.has(circuitOf(id)) && previous!.board.circuits.some((circuit) => circuit.id === circuitOf(id));

const left = (head: string, face: 'serif' | 'sans' = 'serif'): Column => ({ head: [head], align: 'left', face });

function inputs(review: Review, previous: Reviewed, number: () => string): Section | undefined {
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
      left('Input', 'sans'),
      left('Part', 'sans'),
      left('What it is'),
      left(`Revision ${previous.board.identity.mark}`),
      left(`Revision ${review.board.identity.mark}`),
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

function checks(review: Review, number: () => string): Section | undefined {
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
      left('Check', 'sans'),
      { head: ['Margin before, %'], align: 'decimal' },
      left('Verdict', 'sans'),
      { head: ['now, %'], align: 'decimal' },
      left('Verdict', 'sans'),
      { head: ['Moved, %'], align: 'decimal' },
      left('Page', 'sans'),
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

function results(review: Review, previous: Reviewed, number: () => string): Section | undefined {
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
      left('Result', 'sans'),
      left('What it is'),
      left(`Worst case, revision ${previous.board.identity.mark}`),
      left(`Revision ${review.board.identity.mark}`),
      { head: ['Typical moved, %'], align: 'decimal' },
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
