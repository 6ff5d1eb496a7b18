import type { Block, Row } from '../../block.ts';
import { dash, em } from '../../inline.ts';
import type { Review } from '../../review.ts';
import type { Text } from '../../text.ts';
import { sentence } from '../../words.ts';
import { sans, serif, wide } from '../columns.ts';
import { aboutText } from './about.ts';

/** What was decided, why, and what else was considered: so that a later review does not start again. */
export function decided(review: Review, number: () => string): Block[] {
  const { decisions } = review.board;
  if (!decisions.length) return [];
  const rows = decisions.map(
    ({ id, what, why, insteadOf, date, by, about }): Row => ({
      id: `decision-${id}`,
      cells: [
        [id],
        [sentence(what)],
        [em(sentence(why))],
        insteadOf.length ? [insteadOf.map(sentence).join(' ')] : dash,
        aboutText(review, about),
        dated(date, by),
      ],
    }),
  );
  return [
    {
      kind: 'table',
      id: 'decisions',
      number: number(),
      caption: ['What was decided, why, and what else was considered.'],
      columns: [
        sans('No.'),
        wide(serif('Decided'), 0.23),
        wide(serif('Because'), 0.25),
        wide(serif('Instead of'), 0.23),
        sans('About'),
        serif('When, by'),
      ],
      groups: [{ rows }],
      wide: true,
      breaks: true,
    },
  ];
}

const dated = (date: string, by: string | undefined): Text => [by ? `${date}, ${by}` : date];
