import { wire } from './pen.ts';
import { resistor } from './resistor.ts';

/** Fuse: the line runs through the rectangle. */
export const fuse = (length: number): string => resistor(length) + wire('M-15 0h30');
