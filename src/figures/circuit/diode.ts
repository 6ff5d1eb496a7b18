import { outline, plate, wire } from './pen.ts';

/** Diode: anode first; the line runs through the triangle. */
export const diode = (length: number): string =>
  wire(`M${-length / 2} 0H${length / 2}`) + outline('M-5.5-6v12l11-6z') + plate('M5.5-6.5v13');
