import { leads, outline } from './pen.ts';

/** Resistor: a rectangle three times as long as wide. */
export const resistor = (length: number): string => leads(length, 15) + outline('M-15-5h30v10h-30z');
