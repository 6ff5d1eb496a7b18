import type { StoredRevision } from './calculated.ts';

/** The boards as a reader looks for them: what stands now, and what stood before. */
export interface BoardList {
  /** Revisions that no other one supersedes, by board. */
  readonly current: readonly StoredRevision[];
  /** The others, newest first in each board. */
  readonly earlier: readonly StoredRevision[];
}

export function boardList(revisions: readonly StoredRevision[]): BoardList {
  const superseded = new Set(
    revisions.flatMap(({ board, packet }) => (packet?.supersedes ? `${board}/${packet.supersedes}` : [])),
  );
  const sorted = revisions.toSorted(
    (one, other) =>
      compare(one.board, other.board) || compare(issued(other), issued(one)) || compare(other.revision, one.revision),
  );
  const isEarlier = ({ board, revision }: StoredRevision) => superseded.has(`${board}/${revision}`);
  return { current: sorted.filter((one) => !isEarlier(one)), earlier: sorted.filter(isEarlier) };
}

const issued = ({ packet }: StoredRevision): string => packet?.issued ?? '';

/** What a row of the list is chosen by. A revision that is not built counts among those that fail. */
export function chosenBy({
  packet,
  failure,
}: {
  readonly packet?: StoredRevision['packet'] | undefined;
  readonly failure?: string | undefined;
}) {
  return { 'data-verdict': failure ? 'fail' : packet?.verdict, 'data-status': packet?.status };
}

// Not by locale: the order must be the same on every machine.
const compare = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

/** Scale of the margins in the list, in per cent of the limit. */
export const boardScale = {
  from: -10,
  to: 40,
  ticks: [
    { at: -10, text: '−10' },
    { at: 0, text: 'limit' },
    { at: 10, text: '10' },
    { at: 20, text: '20' },
    { at: 30, text: '30' },
  ],
} as const;
