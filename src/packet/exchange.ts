import type { DrawingLine } from './drawing.ts';
import type { Text } from './text.ts';

/**
 * What blocks of the board hand each other: blocks stand on a diagonal in the order of the current and of the signals after it;
 * what one gives another stands in its row, in the other's column. Right of the diagonal goes onward, left of it comes back.
 */
export interface Exchange {
  readonly kind: 'exchange';
  readonly id: string;
  readonly number: string;
  readonly caption: Text;
  readonly alt: string;
  /** Name of each block, in one or two short lines. */
  readonly blocks: readonly (readonly string[])[];
  readonly given: readonly {
    readonly from: number;
    readonly to: number;
    readonly lines: readonly DrawingLine[];
  }[];
}
