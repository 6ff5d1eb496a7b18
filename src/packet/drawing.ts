import type { Place, Side } from '../spec/drawing/drawing.ts';
import type { KindName } from '../spec/drawing/kinds.ts';
import type { Text } from './text.ts';

/** A circuit, a section through copper or a course over time, as symbols on a grid; where the labels find room is the drawer's business. */
export interface Drawing {
  readonly kind: 'drawing';
  readonly id: string;
  /** `7.3`: figures of a chapter are numbered in one row. */
  readonly number: string;
  readonly caption: Text;
  readonly parts: readonly DrawingPart[];
  /** What is drawn and what stands beside it, in sentences. */
  readonly alt: string;
}

export interface DrawingPart {
  readonly symbol: KindName;
  readonly places: readonly Place[];
  readonly heavy: boolean;
  /** Lines that stand beside it, or in the middle of a box. */
  readonly label: readonly DrawingLine[];
  readonly side?: Side;
}

export type DrawingLine = readonly DrawingRun[];

/** A stretch of a label in one face: designators are bold, symbols and nets slope, ranges of results are faint. */
export interface DrawingRun {
  readonly text: string;
  readonly face: 'designator' | 'symbol' | 'net' | 'value' | 'range';
  /** Stands lower and smaller: the index of a symbol. */
  readonly low?: boolean;
}
