import { arrowHead, wire } from './pen.ts';

/** Current on a wire: a filled head on its middle. */
export const currentArrow = (): string => arrowHead(4, 0, [1, 0], 8);

/** Flow of heat or current beside what it flows in: a line of its own with a head at its end. */
export const flowArrow = (length: number): string =>
  wire(`M${-length / 2} 0H${length / 2 - 5}`) + arrowHead(length / 2, 0, [1, 0], 8);
