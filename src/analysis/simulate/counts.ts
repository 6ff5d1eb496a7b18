import type { Grid } from './grid.ts';

/** Boards that are counted together: sums are made over them, and threads share boards out by them. */
export const chunk = 8192;

/** What was counted on some chunks of the boards. Plain data, to hand from thread to thread. */
export interface Counts {
  /** Numbers of the chunks, and for each of them and each output the sums of x − shift and of its square. */
  readonly chunks: readonly number[];
  readonly sums: readonly Float64Array[];
  /** Boards on which an output that decides failed. */
  readonly failed: number;
  readonly outputs: readonly OutputCounts[];
}

export interface OutputCounts {
  /** Undefined where the values of the first boards do not spread over an ordinary range. */
  readonly grid: Grid | undefined;
  /** About where the values lie: what the sums leave out. */
  readonly shift: number;
  readonly min: number;
  readonly max: number;
  /** Boards below zero or not a number. */
  readonly failures: number;
  readonly bins: Uint32Array;
  /** 1 for bins of which every value was kept. */
  readonly flags: Uint8Array;
  readonly kept: readonly Float64Array[];
}
