import type { CheckFinding } from '../../analysis/findings.ts';
import type { Cell, Column, Row, RowGroup, Table } from '../block.ts';
import { cornerArrows, cornerLetters } from '../corners.ts';
import { percent } from '../figures.ts';
import { dash, link, pageNumber, verdictMark } from '../inline.ts';
import { marginCell } from '../margins.ts';
import { failText } from '../numbers.ts';
import type { Chapter } from '../packet.ts';
import { type Review, rankedChecks } from '../review.ts';
import { mustHold, worstLeft } from '../statements.ts';
import { marginStrip } from '../strips.ts';
import type { Text, Verdict } from '../text.ts';
import { checkAnchor } from '../trail.ts';
import { counted, grouped, tallied } from '../words.ts';
import { chapter } from './chapter.ts';
import { decimal, folio, sans, serif, strip, unit } from './columns.ts';

const scale = {
  from: -20,
  to: 60,
  ticks: [
    { at: 0, text: 'limit' },
    { at: 20, text: '20' },
    { at: 40, text: '40' },
  ],
} as const;

/** Every check on one list, worst first. */
export function marginTable(review: Review): Chapter | undefined {
  const checks = rankedChecks(review);
  if (!checks.length) return undefined;
  const table: Table = {
    kind: 'table',
    id: 'margin-table',
    number: '8.1',
    caption: caption(review, checks),
    columns,
    groups: order.flatMap((verdict) => group(review, verdict, checks)),
    wide: true,
    scale,
  };
  return chapter('margins', [table]);
}

const columns: readonly Column[] = [
  folio(),
  sans('Check'),
  serif('Must hold'),
  decimal('Worst'),
  unit(),
  ...cornerLetters.map((_, i): Column => ({ head: i === 0 ? ['At'] : [], align: 'left', face: 'sans' })),
  decimal('Margin, %'),
  strip(0.17),
  sans('Verdict'),
  folio('Page'),
];

const order: readonly Verdict[] = ['fail', 'not assessed', 'accepted', 'marginal', 'pass'];

function group(review: Review, verdict: Verdict, checks: readonly CheckFinding[]): RowGroup[] {
  const members = checks.filter((check) => check.verdict === verdict);
  if (!members.length) return [];
  return [{ title: titleOf(review, verdict, members.length), rows: members.map((check) => row(review, check)) }];
}

function titleOf({ board }: Review, verdict: Verdict, count: number): string {
  const many = tallied(count, 'check');
  const does = count === 1 ? 'does' : 'do';
  const holds = count === 1 ? 'holds' : 'hold';
  switch (verdict) {
    case 'fail':
      return `FAIL: ${many} ${does} not hold`;
    case 'not assessed':
      return `Not assessed: ${many}`;
    case 'accepted':
      return `Accepted deviation: ${many} ${does} not hold, carried by a signed deviation`;
    case 'marginal':
      return `Marginal: ${many} ${holds} by less than the ${percent(board.target, 0, 'nearest')}\u00a0% asked for`;
    case 'pass':
      return `Pass: ${many}`;
    default:
      return verdict satisfies never;
  }
}

function row(review: Review, finding: CheckFinding): Row {
  const check = review.checks.get(finding.id)!;
  const worst = worstLeft(check, finding);
  const strip = marginStrip(finding, [scale.from, scale.to]);
  const cells: Cell[] = [
    [grouped(review.findings.ranking.indexOf(finding.id) + 1)],
    [link(finding.id, checkAnchor(finding.id))],
    mustHold(check),
    worst ? { number: worst.number, ...(finding.verdict === 'pass' ? {} : { worst: true }) } : dash,
    worst?.unit ? [worst.unit] : dash,
    ...cornerArrows(review, finding.at_worst, finding.case),
    marginCell(finding),
    strip ? { strip } : dash,
    [verdictMark(finding.verdict, { deviation: finding.deviation })],
    [pageNumber(checkAnchor(finding.id))],
  ];
  return { id: `margin-${finding.id}`, cells, ...(review.changes.ids.has(finding.id) ? { changed: true } : {}) };
}

function caption({ findings }: Review, checks: readonly CheckFinding[]): Text {
  const failing = checks.filter(({ fail_fraction: boards }) => boards && boards.estimate > 0);
  const clean = checks.find(({ fail_fraction: boards }) => boards?.estimate === 0)?.fail_fraction;
  const trials = `${grouped(findings.trials)} simulated boards`;
  const few = failing.slice(0, 4);
  const named: Text = few.flatMap(
    (check): Text => [' ', link(check.id, checkAnchor(check.id)), ` ${failText(check.fail_fraction!)};`],
  );
  const more = failing.length - few.length;
  const boards: Text = [
    ...(clean
      ? [
          ` Of ${trials}, none fails ${failing.length ? 'the checks not named here' : 'any of them'} (${failText(clean)} at 95\u00a0%).`,
        ]
      : []),
    ...(few.length
      ? [
          ' Boards that fail:',
          ...named.slice(0, -1),
          ` ${failText(few.at(-1)!.fail_fraction!)}${more > 0 ? ` and ${counted(more, 'check')} more` : ''}.`,
        ]
      : []),
  ];
  return [
    `Every check, thinnest margin first. Margin is worst-case slack over the size of the limit. Worst: the left side where the slack is least. At: the conditions that hurt, voltage V, current I and temperature T, at the high ↑ or low ↓ end, ↑↓ where several differ or the worst lies between; a dot where none has a part.`,
    ...boards,
  ];
}
