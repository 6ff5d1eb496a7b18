import type { CheckFinding } from '../../analysis/findings.ts';
import type { Circuit } from '../../spec/board.ts';
import type { Column, Row, Table } from '../block.ts';
import { figureText } from '../figures.ts';
import { dash, em, link, name, verdictMark } from '../inline.ts';
import { marginCell, slackFigure } from '../margins.ts';
import type { Numbering } from '../numbering.ts';
import { failText } from '../numbers.ts';
import type { Review } from '../review.ts';
import { mustHold } from '../statements.ts';
import type { Text } from '../text.ts';
import { checkAnchor, requirementAnchor } from '../trail.ts';
import { inWords } from '../words.ts';
import { decimal, right, sans, serif, unit, wide } from './columns.ts';

const columns: readonly Column[] = [
  wide(sans('Check'), 0.12),
  wide(serif('Must hold'), 0.22),
  serif('because'),
  decimal('Worst slack'),
  unit(),
  decimal('Margin, %'),
  right('Boards that fail'),
  sans('Verdict'),
];

/** What must hold in a circuit, and by how much it does. */
export function checksTable(review: Review, circuit: Circuit, numbers: Numbering): Table | undefined {
  if (!circuit.checks.length) return undefined;
  const alike = circuit.count > 1 ? ` A board counts as failing when any of its ${inWords(circuit.count)} does.` : '';
  return {
    kind: 'table',
    id: `checks-${circuit.id}`,
    number: numbers.table(),
    caption: [
      `Checks. Slack is what is left between the two sides as one expression; the margin is its worst case over the size of the limit. Boards that fail: at 95\u00a0% confidence.${alike}`,
    ],
    columns,
    groups: [{ rows: circuit.checks.map(({ id }) => row(review, review.judged.get(id)!)) }],
    wide: true,
  };
}

/** When the equations hold: these decide nothing about the board, but outside them its numbers are not to be trusted. */
export function validityTable(review: Review, circuit: Circuit, numbers: Numbering): Table | undefined {
  if (!circuit.validity.length) return undefined;
  return {
    kind: 'table',
    id: `validity-${circuit.id}`,
    number: numbers.table(),
    caption: ['When the equations hold. These lines judge the calculation and not the board.'],
    columns: columns.filter((_, i) => i !== 6),
    groups: [{ rows: circuit.validity.map(({ id }) => withoutBoards(row(review, review.judged.get(id)!))) }],
    wide: true,
  };
}

const withoutBoards = ({ cells, ...rest }: Row): Row => ({ ...rest, cells: cells.filter((_, i) => i !== 6) });

function row(review: Review, finding: CheckFinding): Row {
  const check = review.checks.get(finding.id)!;
  const slack = finding.worst_slack === null ? undefined : slackFigure(finding);
  return {
    id: checkAnchor(finding.id),
    cells: [
      [name(check.name)],
      mustHold(check),
      because(review, finding),
      slack ? { number: slack.number, strong: finding.worst_slack! < 0 } : dash,
      slack?.unit ? [slack.unit] : dash,
      marginCell(finding),
      finding.fail_fraction ? [failText(finding.fail_fraction)] : dash,
      [verdictMark(finding.verdict, { deviation: finding.deviation })],
    ],
    ...(review.changes.ids.has(finding.id) ? { changed: true } : {}),
  };
}

function because({ checks, board }: Review, finding: CheckFinding): Text {
  const requirement = board.requirements.filter(({ shownBy }) => shownBy.includes(finding.id));
  const shows = requirement.flatMap(({ id }) => [', ', link(id, requirementAnchor(id))]).slice(1);
  const source = checks.get(finding.id)?.source;
  return [
    em(finding.because.replace(/[.\s]+$/, '')),
    ...(source ? [` (${source})`] : []),
    ...(finding.proven || finding.worst_slack_bound === null
      ? []
      : [
          `. Not closed: proven only that the slack is at least ${figureText(slackFigure({ ...finding, worst_slack: finding.worst_slack_bound }))}`,
        ]),
    ...(finding.reason ? [`. Not assessed: ${finding.reason}`] : []),
    ...(shows.length ? [' (', ...shows, ')'] : []),
  ];
}
