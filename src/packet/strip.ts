/**
 * The range rule: worst case, spread, typical value, limits and target of one result on one scale.
 * All numbers are in the unit of the result. It looks the same in a table row, in the margin, and in a plot.
 */
export interface Strip {
  /** Ends of the scale. */
  readonly scale: readonly [from: number, to: number];
  readonly worst?: readonly [min: number, max: number];
  /** Of `worst` only the first end is a worst case; the other, where the boards begin, takes no end stroke. */
  readonly oneEnded?: boolean;
  readonly typical?: number;
  /** What was read on a real board: a triangle that stands on the line. */
  readonly measured?: number;
  /** 0.135 %, median and 99.865 % of the simulated boards. */
  readonly spread?: readonly [low: number, median: number, high: number];
  readonly rootSumSquare?: readonly [low: number, high: number];
  readonly limits: readonly { readonly at: number; readonly forbidden: 'above' | 'below' }[];
  readonly target?: number;
  /** How far a value may move: a bar with an arrow where it goes on beyond the scale, silent ends where nothing stops it. */
  readonly room?: readonly [from: number, to: number];
  /** Numbers printed under the ends; `worst` ones are in copper. */
  readonly labels: readonly { readonly at: number; readonly text: string; readonly worst?: boolean }[];
  /** One sentence for readers who cannot see it. */
  readonly says: string;
}
