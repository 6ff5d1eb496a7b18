import { arrowHead } from './pen.ts';

/** Distance, time or voltage between two places: a thin line with heads at both ends. */
export const span = (length: number): string =>
  `<path class="drawn-thin" d="M${-length / 2} 0H${length / 2}"/>${arrowHead(length / 2, 0, [1, 0], 5)}${arrowHead(-length / 2, 0, [-1, 0], 5)}`;
