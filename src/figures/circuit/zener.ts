import { outline, plate, wire } from './pen.ts';

/** Diode that is used in breakdown: the bar has a hook. */
export const zener = (length: number): string =>
  wire(`M${-length / 2} 0H${length / 2}`) + outline('M-5.5-6v12l11-6z') + plate('M1.5-6.5h4v13');
