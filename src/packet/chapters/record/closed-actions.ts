import type { Action } from '../../../spec/board.ts';
import type { Block, Row } from '../../block.ts';
import { em, link } from '../../inline.ts';
import type { Review } from '../../review.ts';
import { sentence } from '../../words.ts';
import { sans, serif, wide } from '../columns.ts';
import { aboutText } from './about.ts';

export const isOpen = ({ closed }: Action): boolean => closed === undefined;

/** Actions that were done, with what came of them. The open ones stand in the summary. */
export function closedActions(review: Review, number: () => string): Block[] {
  const done = review.board.actions.filter((action) => !isOpen(action));
  const open = review.board.actions.filter(isOpen);
  const rows = done.map(
    ({ id, says, who, closed, answer, about }): Row => ({
      id: `action-${id}`,
      cells: [
        [id],
        [sentence(says)],
        aboutText(review, about),
        [who ?? '–'],
        [closed!],
        answer ? [em(sentence(answer))] : ['–'],
      ],
    }),
  );
  return [
    ...(open.length
      ? [
          {
            kind: 'paragraph' as const,
            text: [
              'Open actions stand in ',
              link('the summary', 'actions'),
              ` (${open.map(({ id }) => id).join(', ')}).`,
            ],
          },
        ]
      : []),
    ...(rows.length
      ? [
          {
            kind: 'table' as const,
            id: 'closed-actions',
            number: number(),
            caption: ['Actions that are closed.'],
            columns: [
              sans('No.'),
              wide(serif('What was to be done'), 0.3),
              sans('About'),
              serif('Owner'),
              serif('Closed'),
              wide(serif('What came of it'), 0.3),
            ],
            groups: [{ rows }],
            wide: true,
          },
        ]
      : []),
  ];
}
