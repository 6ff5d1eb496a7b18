import { leads, plate, wire } from './pen.ts';

/** Battery of several cells: the long plate is positive, and so is the first end. */
export const battery = (length: number): string =>
  leads(length, 7.5) + wire('M-7.5-10v20M2.5-10v20') + plate('M-2.5-5v10M7.5-5v10') + wire('M-15-7h5M-12.5-9.5v5');
