import type { Deviation } from '../../spec/board.ts';
import type { Block, Row, Table } from '../block.ts';
import { figureText } from '../figures.ts';
import { dash, em, pageNumber, verdictMark } from '../inline.ts';
import { marginCell, slackFigure } from '../margins.ts';
import { failText } from '../numbers.ts';
import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import { checkAnchor, checkLink } from '../trail.ts';
import { sentence } from '../words.ts';
import { chapter } from './chapter.ts';
import { decimal, folio, right, sans, serif } from './columns.ts';

/** Deviations with what they cost in numbers. */
export function decisions(review: Review): Chapter | undefined {
  const { deviations } = review.board;
  if (!deviations.length) return undefined;
  const table: Table = {
    kind: 'table',
    id: 'deviations',
    number: '15.1',
    caption: [
      'Checks that need not hold because somebody answers for it. Shortfall and boards are what was calculated now, not when it was signed.',
    ],
    columns: [
      sans('No.'),
      sans('Check'),
      right('Shortfall'),
      decimal('Margin, %'),
      right('Boards that fail'),
      serif('Reason'),
      serif('Approved'),
      serif('By'),
      sans('Verdict'),
      folio('Page'),
    ],
    groups: [{ rows: deviations.map((deviation) => row(review, deviation)) }],
    wide: true,
  };
  return chapter('decisions', [...idle(review), table]);
}

function row(review: Review, { id, check: checkId, reason, approved, by }: Deviation): Row {
  const finding = review.judged.get(checkId)!;
  const shortfall = finding.worst_slack !== null && finding.worst_slack < 0 ? figureText(slackFigure(finding)) : 'none';
  return {
    id: `deviation-${id}`,
    cells: [
      [id],
      [checkLink(checkId)],
      [shortfall],
      marginCell(finding),
      finding.fail_fraction ? [failText(finding.fail_fraction)] : dash,
      [em(sentence(reason))],
      [approved],
      [by ?? '–'],
      [verdictMark(finding.verdict, { deviation: finding.deviation })],
      [pageNumber(checkAnchor(checkId))],
    ],
  };
}

/** A deviation whose check holds has done its work. */
function idle({ board, judged }: Review): Block[] {
  const without = board.deviations.filter(({ check }) => judged.get(check)?.verdict !== 'accepted');
  if (!without.length) return [];
  const names = without.map(({ id }) => id).join(', ');
  return [
    {
      kind: 'paragraph',
      lead: true,
      text: [
        `${names} ${without.length === 1 ? 'is' : 'are'} not needed any more: what ${without.length === 1 ? 'it carries' : 'they carry'} is not a shortfall now.`,
      ],
    },
  ];
}
