/** What a figure shows, as numbers; how it is drawn is `src/figures`' business. Numbers are in the unit that `title` names. */
export type Plot = Histogram | Curve | Bounds | VegaLite;

/** A wall in a plot, hatched on the side that is not allowed. */
export interface Limit {
  readonly at: number;
  readonly forbidden: 'above' | 'below';
  /** As printed beside it: `limit 85 °C`. */
  readonly label: string;
}

/** How one result lies over the simulated boards. */
export interface Histogram {
  readonly kind: 'histogram';
  /** Quantity and unit, at the right end of the axis: `Trip current, A`. */
  readonly title: string;
  /** Rising, one more than `counts`. */
  readonly edges: readonly number[];
  readonly counts: readonly number[];
  readonly limits: readonly Limit[];
  /** Stems over the bars: `{ at: 120.1, label: '0.135 %' }`, from low to high; the middle one is the median. */
  readonly quantiles: readonly { readonly at: number; readonly label: string }[];
  /** Copper stems, for a result with one limit: `{ at: 89.5, label: 'worst 89.5' }`. */
  readonly worst: readonly { readonly at: number; readonly label: string }[];
  /** Rows under the bars on the same scale. */
  readonly intervals?: {
    readonly worst: readonly [min: number, max: number];
    readonly typical: number;
    readonly rootSumSquare?: readonly [low: number, high: number];
    readonly spread?: readonly [low: number, median: number, high: number];
  };
}

/** One result over one condition: typical line and worst-case band. */
export interface Curve {
  readonly kind: 'curve';
  readonly xTitle: string;
  readonly yTitle: string;
  /** Rising in `x`. Lines are drawn within a run only: between two runs lies a jump, or a gap. */
  readonly points: readonly CurvePoint[];
  /** Written along the typical line: `typical parts, 25 °C, 36 V`. */
  readonly typicalLabel: string;
  /** Limits that are the same all along. */
  readonly limits: readonly Limit[];
  /** How the limit that goes with the points is drawn. */
  readonly limitLine?: Omit<Limit, 'at'>;
  readonly target?: { readonly at: number; readonly label: string };
  /** Dots with numbers on the edges of the band: `{ x: 70, y: 100.3, label: 'worst 100.3 °C' }`. */
  readonly ends: readonly { readonly x: number; readonly y: number; readonly label: string }[];
  /** Named operating cases, as bars over the axis. */
  readonly cases: readonly { readonly from: number; readonly to: number; readonly label: string }[];
  /** A place on the axis that a reader looks for: `chosen 10 Ω`. */
  readonly chosen?: { readonly x: number; readonly label: string };
  /** An axis of decades, for values above nought that go over several. */
  readonly decades?: { readonly x: boolean; readonly y: boolean };
}
export interface CurvePoint {
  readonly x: number;
  readonly typical: number;
  readonly low: number;
  readonly high: number;
  readonly limit?: number;
  readonly run?: number;
}

/** A curve, and boxes that enclose it over the pieces of its range. */
export interface Bounds {
  readonly kind: 'bounds';
  readonly xTitle: string;
  readonly yTitle: string;
  readonly line: readonly { readonly x: number; readonly y: number }[];
  readonly coarse: readonly Piece[];
  readonly fine: readonly Piece[];
  /** Written beside the coarse and the fine boxes. */
  readonly labels: readonly string[];
  readonly worst: { readonly at: number; readonly label: string };
}
export interface Piece {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
}

/** Any other plot, as a Vega-Lite specification with its data in it. */
export interface VegaLite {
  readonly kind: 'vega-lite';
  readonly spec: Readonly<Record<string, unknown>>;
}
