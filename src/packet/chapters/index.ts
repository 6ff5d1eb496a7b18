import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import { bench } from './bench.ts';
import { calculations } from './calculations.ts';
import { cautions } from './cautions.ts';
import { changed } from './changed.ts';
import { colophon } from './colophon.ts';
import { conditions } from './conditions.ts';
import { contents } from './contents.ts';
import { cover } from './cover.ts';
import { decisions } from './decisions.ts';
import { firmware } from './firmware.ts';
import { heat } from './heat.ts';
import { marginTable } from './margin-table.ts';
import { parts } from './parts.ts';
import { sources } from './sources.ts';
import { summary } from './summary.ts';
import { testPoints } from './test-points.ts';
import { tolerances } from './tolerances.ts';

/** In the order of the packet; each gives nothing where the board gives it nothing to say. */
const body = [
  summary,
  cautions,
  changed,
  conditions,
  calculations,
  marginTable,
  tolerances,
  heat,
  parts,
  testPoints,
  firmware,
  bench,
  decisions,
  sources,
  colophon,
];

/** All chapters. Cover and contents speak of the others, so they are written last. */
export function chaptersOf(review: Review): Chapter[] {
  const written = body.flatMap((write): Chapter[] => {
    const chapter = write(review);
    return chapter ? [chapter] : [];
  });
  return [cover(review, written), contents(review, written), ...written];
}
