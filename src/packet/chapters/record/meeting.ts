import type { Criterion, ReviewRecord } from '../../../spec/record.ts';
import type { Block, Row, Table } from '../../block.ts';
import { dash, em, link, strong } from '../../inline.ts';
import type { Review } from '../../review.ts';
import type { Text } from '../../text.ts';
import { capital, counted, sentence } from '../../words.ts';
import { sans, serif, wide } from '../columns.ts';
import { aboutText } from './about.ts';

/** The meeting: kind, roles, aims, what had to be there, what was said, what was decided. */
export function meeting(review: Review, number: () => string): Block[] {
  const { review: held } = review.board;
  if (!held) return [];
  return [
    { kind: 'paragraph', lead: true, text: outcome(held) },
    ...lines(held),
    ...criteria('entrance', 'What had to be there before the meeting.', held.entrance, number),
    ...criteria('success', 'What had to be shown in it.', held.success, number),
    ...comments(review, held, number),
  ];
}

function outcome({ kind, date, outcome: decision, conditions, comments: raised }: ReviewRecord): Text {
  const said = raised.length
    ? ` ${capital(counted(raised.length, 'comment'))} ${raised.length === 1 ? 'was' : 'were'} raised.`
    : '';
  return [
    `${capital(kind)} review of ${date}: `,
    decision ? strong(decision) : 'not yet decided',
    conditions.length ? `, provided that ${conditions.map((one) => one.replace(/[.\s]+$/, '')).join('; ')}.` : '.',
    said,
  ];
}

function lines({ present, aims }: ReviewRecord): Block[] {
  const one = (head: string, items: readonly string[]): Block[] =>
    items.length ? [{ kind: 'paragraph', text: [strong(`${head} `), sentence(items.join('; '))] }] : [];
  return [...one('Present.', present), ...one('Aims.', aims)];
}

function criteria(id: string, caption: string, all: readonly Criterion[], number: () => string): Block[] {
  if (!all.length) return [];
  const rows = all.map(
    ({ says, met, remark }): Row => ({
      cells: [
        [sentence(says)],
        [met === undefined ? '–' : met ? 'yes' : strong('no')],
        remark ? [em(sentence(remark))] : dash,
      ],
    }),
  );
  const table: Table = {
    kind: 'table',
    id: `review-${id}`,
    number: number(),
    caption: [caption],
    columns: [
      wide(serif(id === 'entrance' ? 'Entrance criterion' : 'Success criterion'), 0.5),
      sans('Met'),
      serif('Remark'),
    ],
    groups: [{ rows }],
    wide: true,
  };
  return [table];
}

function comments(review: Review, { comments: all }: ReviewRecord, number: () => string): Block[] {
  if (!all.length) return [];
  const rows = all.map(
    ({ id, says, class: kind, by, about, answer, action }): Row => ({
      id: `comment-${id}`,
      cells: [
        [id],
        [kind === 'major' ? strong(kind) : kind],
        [by ?? '–'],
        aboutText(review, about),
        [sentence(says)],
        answer ? [em(sentence(answer))] : ['no answer yet'],
        action ? [link(action, `action-${action}`)] : dash,
      ],
    }),
  );
  return [
    {
      kind: 'table',
      id: 'comments',
      number: number(),
      caption: ['What was said in the room, and what came of it.'],
      columns: [
        sans('No.'),
        sans('Class'),
        serif('Raised by'),
        sans('About'),
        wide(serif('Comment'), 0.28),
        wide(serif('Answer'), 0.28),
        sans('Action'),
      ],
      groups: [{ rows }],
      wide: true,
      breaks: true,
    },
  ];
}
