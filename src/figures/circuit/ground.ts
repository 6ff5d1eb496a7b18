import { plate, wire } from './pen.ts';

/** Reference conductor of the board: a bar under the wire. */
export const ground = (): string => wire('M0 0V8') + plate('M-7.5 8h15');
