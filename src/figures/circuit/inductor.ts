import { leads, outline } from './pen.ts';

/** Inductor: four half circles. */
export const inductor = (length: number): string =>
  leads(length, 16) + outline('M-16 0a4 4 0 0 1 8 0a4 4 0 0 1 8 0a4 4 0 0 1 8 0a4 4 0 0 1 8 0');
