import { dash, joined, link } from '../../inline.ts';
import type { Review } from '../../review.ts';
import type { Text } from '../../text.ts';
import { checkLink, idLink, requirementAnchor } from '../../trail.ts';

/** What an entry of the record speaks of, each as a link with the section in which it stands. */
export function aboutText(review: Review, ids: readonly string[]): Text {
  return ids.length
    ? joined(
        ids.map((id) => aboutOne(review, id)),
        '; ',
      )
    : dash;
}

function aboutOne({ checks, circuits, board, trail }: Review, id: string): Text {
  if (checks.has(id)) return [checkLink(id)];
  if (circuits.has(id)) return [link(id, id), `, ${trail.sections.get(id)}`];
  if (board.requirements.some((one) => one.id === id)) return [link(id, requirementAnchor(id))];
  return idLink(trail, id);
}
