import { leads, wire } from './pen.ts';

/** Make contact, drawn open. */
export const makeContact = (length: number): string => leads(length, 11) + wire('M-11 0L10-9');
