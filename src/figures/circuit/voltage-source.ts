import { leads, outline, ring, wire } from './pen.ts';

/** Ideal voltage source: the line runs through it; the plus sign stands at the first end. */
export const voltageSource = (length: number): string =>
  leads(length, 10) + ring(0, 0, 10) + outline('M-10 0h20') + wire('M-17-7h5M-14.5-9.5v5');
