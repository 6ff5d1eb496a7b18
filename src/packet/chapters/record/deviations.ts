import type { Deviation } from '../../../spec/board.ts';
import type { Block, Row, Table } from '../../block.ts';
import { figureText } from '../../figures.ts';
import { dash, em, link, pageNumber, verdictMark } from '../../inline.ts';
import { marginCell, slackFigure } from '../../margins.ts';
import { failText } from '../../numbers.ts';
import type { Review } from '../../review.ts';
import type { Text } from '../../text.ts';
import { checkAnchor, checkLink, requirementAnchor } from '../../trail.ts';
import { sentence } from '../../words.ts';
import { decimal, folio, right, sans, serif, wide } from '../columns.ts';

/** Deviations with what they cost in numbers. */
export function deviations(review: Review, number: () => string): Block[] {
  const all = review.board.deviations;
  if (!all.length) return [];
  const table: Table = {
    kind: 'table',
    id: 'deviations',
    number: number(),
    caption: [
      'Checks that need not hold because somebody answers for it. Shortfall and boards are what was calculated now, not when it was signed.',
    ],
    columns: [
      sans('No.'),
      wide(sans('Check'), 0.13),
      right('Shortfall'),
      decimal('Margin, %'),
      right('Boards that fail'),
      wide(serif('Reason'), 0.33),
      serif('Approved'),
      serif('By'),
      sans('Verdict'),
      folio('Page'),
    ],
    groups: [{ rows: all.map((deviation) => row(review, deviation)) }],
    wide: true,
    breaks: true,
  };
  return [...idle(review), table];
}

function row(review: Review, deviation: Deviation): Row {
  const { id, check: checkId, approved, by } = deviation;
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
      reasonText(review, deviation),
      [approved],
      [by ?? '–'],
      [verdictMark(finding.verdict, { deviation: finding.deviation })],
      [pageNumber(checkAnchor(checkId))],
    ],
  };
}

/** Why, what it does in use, which boards it holds for, what ends it, and which requirements stand on the check. */
function reasonText({ board }: Review, { check, reason, effect, appliesTo, until }: Deviation): Text {
  const touched = board.requirements.filter(({ shownBy }) => shownBy.includes(check));
  const named = touched.flatMap(({ id }) => [', ', link(id, requirementAnchor(id))]).slice(1);
  return [
    em(sentence(reason)),
    ...(effect ? [` Effect: ${sentence(effect)}`] : []),
    ...(appliesTo ? [` For ${sentence(appliesTo).replace(/^./, (first) => first.toLowerCase())}`] : []),
    ...(until ? [` Until ${sentence(until).replace(/^./, (first) => first.toLowerCase())}`] : []),
    ...(named.length ? [' Touches ', ...named, '.'] : []),
  ];
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
