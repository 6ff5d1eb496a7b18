import { leads, outline, plate } from './pen.ts';

/** Quartz crystal between its plates. */
export const crystal = (length: number): string =>
  leads(length, 6.5) + plate('M-6.5-7v14M6.5-7v14') + outline('M-3.3-9.5h6.6v19h-6.6z');
