import { outline, wire } from './pen.ts';

/** Rail that is made elsewhere: an arrow upward. */
export const supply = (): string => wire('M0 0V-10') + outline('M-4-6L0-11L4-6');
