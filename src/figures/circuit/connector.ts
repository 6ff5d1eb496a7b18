import { filled, outline, wire } from './pen.ts';

/** Plug and socket: the socket's half round at the first end, the plug's pin at the second. */
export const connector = (length: number): string =>
  wire(`M${-length / 2} 0H-4M7 0H${length / 2}`) +
  outline('M2-5a5.6 5.6 0 0 0 0 10') +
  filled('M-.5-1.8h8.5v3.6h-8.5z');
