import type { CheckFinding } from '../../analysis/findings.ts';
import type { Block, Column, Facts, Row, Table } from '../block.ts';
import { dash, joined, link, listed, page, pageNumber, verdictMark } from '../inline.ts';
import { countsOf, marginCell, marginText } from '../margins.ts';
import { yieldText } from '../numbers.ts';
import type { Chapter, Section } from '../packet.ts';
import { type Review, rankedChecks } from '../review.ts';
import { mustHold } from '../statements.ts';
import { marginStrip } from '../strips.ts';
import type { Text, Verdict } from '../text.ts';
import { checkAnchor, checkLink } from '../trail.ts';
import { grouped, inWords } from '../words.ts';
import { chapter, renumbered, section } from './chapter.ts';
import { decimal, folio, sans, serif, strip } from './columns.ts';
import { corners } from './corner-table.ts';
import { aboutText } from './record/about.ts';
import { isOpen } from './record/closed-actions.ts';
import { benchAnchor, requirements } from './requirements.ts';

/** What one page must say to somebody who reads no other. */
export function summary(review: Review): Chapter {
  const sections = [thinnest(review), corners(review), requirements(review), actions(review)];
  const opening = [facts(review), ...early(review), ...outside(review), ...contradicted(review)];
  return chapter('summary', opening, renumbered('summary', sections));
}

/** `52 pass, 4 marginal, one accepted` */
export function countsText(checks: readonly CheckFinding[]): string {
  const counts = countsOf(checks);
  const words: readonly [Verdict, string][] = [
    ['fail', 'fail'],
    ['not assessed', 'not assessed'],
    ['accepted', 'accepted'],
    ['marginal', 'marginal'],
    ['pass', 'pass'],
  ];
  return words
    .flatMap(([verdict, word]) => (counts[verdict] ? [`${grouped(counts[verdict])} ${word}`] : []))
    .join(', ');
}

/** The thinnest margin that no deviation carries. */
export const deciding = (review: Review): CheckFinding | undefined => {
  const ranked = rankedChecks(review);
  return ranked.find(({ verdict }) => verdict !== 'accepted') ?? ranked[0];
};

/** Numbers that are not to be trusted, for their equations are used outside their range. */
function outside({ findings }: Review): Block[] {
  const broken = findings.validity.filter(({ verdict }) => verdict === 'fail' || verdict === 'not assessed');
  if (!broken.length) return [];
  const names = joined(
    broken.map(({ id }): Text => [checkLink(id)]),
    ', ',
  );
  return [
    {
      kind: 'paragraph',
      lead: true,
      text: [
        'Equations are used outside the range in which they hold: ',
        ...names,
        '. The numbers of these circuits, and the verdicts on them, are in doubt.',
      ],
    },
  ];
}

/** A released board with something in the way of its release is said so first. */
function early({ board }: Review): Block[] {
  const blocking = board.actions.filter((action) => isOpen(action) && action.blocksRelease);
  if (board.identity.status !== 'released' || !blocking.length) return [];
  const names = listed(blocking.map(({ id }): Text => [link(id, `action-${id}`)]));
  const verb = blocking.length === 1 ? 'blocks' : 'block';
  return [{ kind: 'paragraph', lead: true, text: ['Released although ', ...names, ` ${verb} release.`] }];
}

/** Readings on the bench that the calculation does not allow: what rests on the same equations is in doubt. */
function contradicted({ findings }: Review): Block[] {
  const outside = findings.bench.filter(({ verdict }) => verdict === 'outside');
  if (!outside.length) return [];
  const names = listed(
    outside.map(({ id, point, reads }): Text => [link(id, benchAnchor(id)), ` at ${point ?? reads}`]),
  );
  const are = outside.length === 1 ? 'lies' : 'lie';
  return [{ kind: 'paragraph', lead: true, text: ['On the bench, ', ...names, ` ${are} outside what was predicted.`] }];
}

function facts(review: Review): Facts {
  const { findings, board } = review;
  const worst = deciding(review);
  const actions = board.actions.filter(isOpen);
  const blocking = actions.filter(({ blocksRelease }) => blocksRelease);
  const open = actions.length;
  return {
    kind: 'facts',
    items: [
      {
        figure: grouped(findings.checks.length),
        text: [findings.checks.length ? `checks: ${countsText(findings.checks)}` : 'checks; nothing is judged'],
      },
      ...(worst
        ? [
            {
              figure: marginText(worst),
              text: ['thinnest margin: ', checkLink(worst.id), ', ', page(checkAnchor(worst.id))] as Text,
            },
          ]
        : []),
      ...(findings.yield
        ? [
            {
              figure: yieldText(findings),
              text: [
                `of boards hold every check at every corner, at 95\u00a0% confidence; ${grouped(findings.trials)} simulated${setAside(review)}`,
              ] as Text,
            },
          ]
        : []),
      {
        figure: grouped(open),
        text: [
          open === 0
            ? 'actions open'
            : `${open === 1 ? 'action' : 'actions'} open; ${blocking.length ? `${inWords(blocking.length)} of them ${blocking.length === 1 ? 'blocks' : 'block'} release` : 'none blocks release'}`,
        ],
      },
    ],
  };
}

/** Deviations whose checks do not count in the yield. */
export function setAside({ findings }: Review): string {
  const ids = findings.checks.flatMap(({ deviation }) => deviation ?? []);
  return ids.length ? `; ${ids.join(', ')} left out` : '';
}

function thinnest(review: Review): Section | undefined {
  const ten = rankedChecks(review).slice(0, 10);
  if (!ten.length) return undefined;
  const from = Math.max(-60, 10 * Math.floor(Math.min(-1, ...ten.map(({ margin }) => (margin ?? 0) * 10))));
  const scale: NonNullable<Table['scale']> = {
    from,
    to: 60,
    ticks: [
      { at: 0, text: 'limit' },
      ...[20, 40].map((at) => ({ at, text: String(at) })),
      ...(from <= -20 ? [{ at: -20, text: '\u221220' }] : []),
    ],
  };
  const row = (check: CheckFinding, i: number): Row => {
    const strip = marginStrip(check, [scale.from, scale.to]);
    return {
      cells: [
        [String(i + 1)],
        [checkLink(check.id)],
        mustHold(review.checks.get(check.id)!),
        strip ? { strip } : dash,
        marginCell(check),
        [verdictMark(check.verdict, { deviation: check.deviation })],
        [pageNumber(checkAnchor(check.id))],
      ],
    };
  };
  const table: Table = {
    kind: 'table',
    id: 'thinnest-margins',
    number: '3.1',
    caption: [
      'Worst-case slack in per cent of the limit. Copper: the proven worst case. Bar: the middle 99.73\u00a0% of boards. Dashes: the margin asked for. The whole list is ',
      link('table 8.1', 'margin-table'),
      '.',
    ],
    columns: thinnestColumns,
    groups: [{ rows: ten.map(row) }],
    wide: true,
    scale,
  };
  return section('summary', 1, 'thinnest', ten.length === 10 ? 'Ten thinnest margins' : 'All margins, thinnest first', [
    table,
  ]);
}

const thinnestColumns: readonly Column[] = [
  folio(),
  sans('Check'),
  serif('Must hold'),
  strip(0.36),
  decimal('Worst, %'),
  sans('Verdict'),
  folio('Page'),
];

function actions(review: Review): Section | undefined {
  const { board } = review;
  const open = board.actions.filter(isOpen);
  if (!open.length) return undefined;
  const table: Table = {
    kind: 'table',
    id: 'actions',
    number: board.requirements.length ? '3.3' : '3.2',
    caption: ['What is to be done, by whom and until when.'],
    columns: [
      sans('No.'),
      serif('What is to be done'),
      sans('About'),
      serif('Who'),
      serif('Due'),
      serif('Blocks release'),
    ],
    groups: [
      {
        rows: open.map(({ id, says, who, due, blocksRelease, about }) => ({
          id: `action-${id}`,
          cells: [
            [id],
            [says],
            aboutText(review, about),
            [who ?? '–'],
            [due ?? '–'],
            [blocksRelease ? { kind: 'strong', text: 'yes' } : 'no'],
          ],
        })),
      },
    ],
    wide: true,
  };
  return section('summary', 3, 'actions', 'Open actions', [table]);
}
