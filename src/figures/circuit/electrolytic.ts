import { capacitor } from './capacitor.ts';
import { wire } from './pen.ts';

/** Polarised capacitor: the plus sign stands at the first end. */
export const electrolytic = (length: number): string => capacitor(length) + wire('M-9.5-7h5M-7-9.5v5');
