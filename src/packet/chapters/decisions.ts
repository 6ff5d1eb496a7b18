import type { Block } from '../block.ts';
import { numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { chapter, section } from './chapter.ts';
import { closedActions } from './record/closed-actions.ts';
import { decided } from './record/decided.ts';
import { deviations } from './record/deviations.ts';
import { meeting } from './record/meeting.ts';
import { notes } from './record/notes.ts';

/** What was decided and accepted, what the meeting said, and what the engineer wrote beside the numbers. */
export function decisions(review: Review): Chapter | undefined {
  const numbers = numbering(15);
  const { table } = numbers;
  const parts: readonly (readonly [id: string, title: string, blocks: readonly Block[]])[] = [
    ['decided', 'Decisions', decided(review, table)],
    ['deviations', 'Deviations', deviations(review, table)],
    ['notes', "Designer's notes", notes(review, numbers)],
    ['meeting', 'Review record', [...meeting(review, table), ...closedActions(review, table)]],
  ];
  const sections = parts
    .filter(([, , blocks]) => blocks.length > 0)
    .map(([id, title, blocks], i): Section => section('decisions', i + 1, id, title, blocks));
  return sections.length ? chapter('decisions', [], sections) : undefined;
}
