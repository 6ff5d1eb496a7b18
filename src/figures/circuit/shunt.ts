import { leads, tap } from './pen.ts';

/**
 * Shunt with four terminals: the current goes through, the two others tap the voltage across the element.
 * @param first, second  distances of the sense ends from the axis
 */
export const shunt = (length: number, first: number, second: number): string =>
  leads(length, 15) +
  `<path class="drawn-outline drawn-shunt" d="M-15-5h30v10h-30z"/>` +
  tap(`M-10-5V${-first}M10-5V${-second}`);
