import { bins } from '../grid.ts';

/**
 * What is counted of one output, as it lies in memory. Doubles stand twice, for two boards at a time: those with even
 * numbers in the first, odd in the second.
 */
export const tallyLayout = {
  /** The grid. */
  shift: 0,
  scale: 16,
  offset: 32,
  /** Sums of x − shift and of its square. */
  sum: 48,
  squares: 64,
  min: 80,
  max: 96,
  /** Boards below zero or not a number: a whole number, like the rest. */
  failures: 112,
  /** Address of the next value to keep, and of the end of the store. */
  next: 116,
  end: 120,
  /** For each bin a byte: 8, which is the size of a value, where values are kept, else 0. */
  flags: 128,
  /** For each bin four bytes. */
  counts: 128 + bins,
  size: 128 + 5 * bins + 64,
} as const;
