import type { KindName } from './kinds.ts';

/** A place of the grid, x to the right and y down, in modules of 10 px (2.65 mm on paper). */
export type Place = readonly [x: number, y: number];

/** A rectangle in modules; its sides need not lie on the grid. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** One line of a drawing: a symbol, a wire or a mark, with what is written beside it. */
export interface DrawnPart {
  readonly kind: KindName;
  readonly places: readonly Place[];
  /** Symbols of the method whose designator and value stand beside it. */
  readonly symbols: readonly string[];
  readonly words?: string;
  /** Carries the power current. */
  readonly heavy: boolean;
  /** Where its label is wanted; elsewhere if there is no room. */
  readonly side?: Side;
}

export const sides = ['left', 'right', 'above', 'below'] as const;
export type Side = (typeof sides)[number];

/** What a circuit looks like, as data: symbols placed on a grid, before any value is known. */
export interface Drawing {
  /** What is drawn, in one sentence. */
  readonly says: string;
  readonly parts: readonly DrawnPart[];
}
