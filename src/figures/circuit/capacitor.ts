import { leads, plate } from './pen.ts';

/** Capacitor: two plates. */
export const capacitor = (length: number): string => leads(length, 2.5) + plate('M-2.5-10v20M2.5-10v20');
