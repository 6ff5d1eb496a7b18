import { arrowHead, leads, outline, ring } from './pen.ts';

/** Ideal current source: the line stands across it; the arrow shows which way it drives. */
export const currentSource = (length: number): string =>
  leads(length, 10) + ring(0, 0, 10) + outline('M0-10v20') + arrowHead(Math.min(length / 2, 19), 0, [1, 0]);
