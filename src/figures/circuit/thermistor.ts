import { outline } from './pen.ts';
import { resistor } from './resistor.ts';

/** Resistor that follows temperature: a line with a flat end across it. The sign beside it says which way. */
export const thermistor = (length: number): string => resistor(length) + outline('M-17 9h5L11-9');
