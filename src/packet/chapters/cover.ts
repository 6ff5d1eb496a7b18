import type { Circuit } from '../../spec/board.ts';
import { chapterAnchor } from '../anchors.ts';
import type { Banner, SignOff, Statement, TitleBlock, TitleField } from '../block.ts';
import { name, page } from '../inline.ts';
import { countsOf, marginText, verdictSentence } from '../margins.ts';
import { yieldText } from '../numbers.ts';
import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import type { Text } from '../text.ts';
import { checkAnchor, checkLink } from '../trail.ts';
import { capital, grouped } from '../words.ts';
import { cautionCounts, signalWords } from './cautions.ts';
import { chapter } from './chapter.ts';
import { isOpen } from './record/closed-actions.ts';
import { deciding, setAside } from './summary.ts';

/** Verdict, decision and signatures. `body` are the chapters that follow: what is signed for must stand in the packet. */
export function cover(review: Review, body: readonly Chapter[]): Chapter {
  const warning = banner(review);
  return chapter('cover', [
    statement(review),
    ...(warning ? [warning] : []),
    signOff(review, body),
    titleBlock(review),
  ]);
}

function statement(review: Review): Statement {
  const { findings, board } = review;
  const worst = deciding(review);
  const actions = board.actions.filter(isOpen);
  const blocking = actions.filter(({ blocksRelease }) => blocksRelease).map(({ id }) => id);
  const open = blocking.length
    ? `${blocking.join(', ')} ${blocking.length === 1 ? 'blocks' : 'block'} release`
    : 'none blocks release';
  const facts: Statement['facts'][number][] = [
    ...(worst
      ? [
          {
            label: 'Thinnest margin',
            figure: marginText(worst),
            text: [checkLink(worst.id), ', ', page(checkAnchor(worst.id))] as Text,
          },
        ]
      : []),
    ...(findings.yield
      ? [
          {
            label: 'Simulated yield, at 95\u00a0%',
            figure: yieldText(findings),
            text: [`${grouped(findings.trials)} boards${setAside(review)}`],
          },
        ]
      : []),
    {
      label: 'Open actions',
      figure: grouped(actions.length),
      text: [actions.length ? open : board.actions.length ? 'all are closed' : 'none in the specification'],
    },
  ];
  return {
    kind: 'statement',
    verdict: findings.verdict,
    text: [verdictSentence(countsOf(findings.checks), board.target)],
    facts,
  };
}

function banner({ cautions }: Review): Banner | undefined {
  const level = signalWords.find((word) => cautions.some((caution) => caution.level === word));
  if (!level) return undefined;
  const gravest = cautions.filter((caution) => caution.level === level).slice(0, 3);
  return {
    kind: 'banner',
    level,
    counts: cautionCounts(cautions),
    text: [
      [
        { kind: 'strong', text: 'Read chapter 4, ' },
        page(chapterAnchor({ slug: 'cautions' })),
        { kind: 'strong', text: ', before anything is powered.' },
        ` Among them: ${gravest.map(({ hazard }) => hazard).join('; ')}.`,
      ],
      [
        'The figures in this packet are calculations from the specification. They are no safety approval and no test report. Work on the powered drive is for qualified persons, under the electrical and machinery rules of the place where it is done.',
      ],
    ],
  };
}

/** Places on the board that a power engineer answers for; the rest is sensing, supply and control. */
const powerPlaces = new Set(['source', 'bus', 'stage', 'drive', 'motor', 'copper', 'heat']);

function signOff(review: Review, body: readonly Chapter[]): SignOff {
  const isPower = ({ method }: Circuit): boolean => method !== undefined && powerPlaces.has(method.place);
  const sectionsOf = (wanted: (circuit: Circuit) => boolean): string[] =>
    review.board.circuits.filter(wanted).map(({ id }) => review.trail.sections.get(id)!);
  const chapters = (...numbers: readonly number[]): string[] =>
    body.filter(({ number }) => numbers.includes(number)).map(({ number }) => String(number));
  const roles: [string, string[]][] = [
    ['Designer', ['all chapters']],
    ['Reviewer, power electronics', [...sectionsOf(isPower), ...chapters(9, 10)]],
    ['Reviewer, sensing, firmware', [...sectionsOf((circuit) => !isPower(circuit)), ...chapters(13)]],
    ['Safety', chapters(4, 15)],
    ['Test engineering', chapters(12, 14)],
    ['Chair, not of the design team', ['the decision']],
  ];
  const digest = review.findings.inputs_sha256.slice(0, 12);
  return {
    kind: 'sign-off',
    decisions: ['pass', 'pass with actions', 'repeat the review', 'stop'],
    roles: roles
      .filter(([, scope]) => scope.length > 0)
      .map(([role, scope]) => ({ role, scope: [ranged(scope), ' · inputs ', name(digest)] })),
  };
}

/** `7.1 to 7.6, 9, 10` */
function ranged(numbers: readonly string[]): string {
  const runs: string[][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last && follows(last.at(-1)!, number)) last.push(number);
    else runs.push([number]);
  }
  return runs.map((run) => (run.length > 2 ? `${run[0]} to ${run.at(-1)}` : run.join(', '))).join(', ');
}

const follows = (before: string, after: string): boolean => {
  const [a, b] = [before.split('.'), after.split('.')];
  return a.length === 2 && b.length === 2 && a[0] === b[0] && Number(b[1]) === Number(a[1]) + 1;
};

function titleBlock({ board, findings, previous }: Review): TitleBlock {
  const { identity } = board;
  const field = (label: string, value: string | undefined, span: number, strong = false): TitleField => ({
    label,
    value: value ?? '–',
    span,
    ...(strong ? { strong } : {}),
  });
  return {
    kind: 'title-block',
    rows: [
      [
        field('Legal owner', identity.owner, 5),
        field('Document type', 'Design review packet', 4),
        field('Rev.', identity.mark, 1, true),
        field('Identification no.', identity.document, 2, true),
        { label: 'Sheet', value: { kind: 'sheets' }, span: 2 },
      ],
      [
        field('Title', identity.title, 5, true),
        field('Supplementary title', identity.supplement, 4),
        field('Lang.', identity.language, 1),
        field('Date of issue', identity.issued, 2),
        field('Supersedes', previous?.board.identity.mark ?? identity.supersedes, 2),
      ],
      [
        field('Responsible department', identity.department, 3),
        field('Created by', identity.designer, 3),
        field('Approved by', identity.approver, 3),
        field('Format', 'A4', 1),
        field('Status', capital(identity.status), 2, true),
        field('Classification', identity.classification ?? 'none', 2),
      ],
    ],
    digest: findings.inputs_sha256,
    digestNote: [
      `The decision above is about these inputs and no others. Copperplate ${findings.tool}, seed ${findings.seed}, ${grouped(findings.trials)} trials. How to verify and rebuild: `,
      page(chapterAnchor({ slug: 'colophon' })),
      '.',
    ],
  };
}
