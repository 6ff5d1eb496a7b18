import type { Tree } from '../expression/tree.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Unit } from '../quantity/unit.ts';
import type { BenchReading } from './bench/bench-reading.ts';
import type { bases, benchSteps, stations } from './circuit-schema.ts';
import type { Correlations } from './correlations.ts';
import type { Drawing } from './drawing/drawing.ts';
import type { Method, Policy, partKinds } from './method-schema.ts';
import type { NoteBlock } from './notes/notes.ts';
import type { Action, Decision, Deviation, Requirement, ReviewRecord } from './record.ts';
import type { cautionLevels, statuses } from './spec-schema.ts';

/**
 * A board as the analysis works with it: every text read, every name resolved to the id of what it stands for.
 * Ids are `I_ph` for a condition of the board, `circuit.symbol` for what a circuit is given or finds.
 */
export interface Board {
  /** Folder names. */
  readonly name: string;
  readonly revision: string;
  readonly identity: Identity;
  readonly conditions: readonly Input[];
  readonly cases: readonly OperatingCase[];
  /** A check that holds by less than this ratio is marginal. */
  readonly target: number;
  readonly policy?: Policy;
  readonly derating: readonly Input[];
  readonly circuits: readonly Circuit[];
  /** Sums over circuits that some equation asks for: `board.heat`. */
  readonly totals: readonly Result[];
  readonly requirements: readonly Requirement[];
  readonly deviations: readonly Deviation[];
  readonly decisions: readonly Decision[];
  readonly actions: readonly Action[];
  readonly review?: ReviewRecord;
  /** What the engineer wrote in `notes.mdx`. */
  readonly notes?: readonly NoteBlock[];
  /** What was read on real boards; none until `bench.csv` is there. */
  readonly bench: readonly BenchReading[];
  readonly safety: Readonly<Record<string, string>>;
  /** What this board decides about safety cautions. */
  readonly cautions: readonly CautionDecision[];
}

export interface CautionDecision {
  readonly id: string;
  readonly level?: (typeof cautionLevels)[number];
  readonly dismissed: boolean;
  readonly reason?: string;
  readonly role?: string;
  readonly date?: string;
}

export interface Identity {
  readonly title: string;
  readonly document: string;
  /** As printed: `B`. */
  readonly mark: string;
  readonly supersedes?: string;
  readonly issued: string;
  readonly status: (typeof statuses)[number];
  readonly purpose: string;
  readonly owner?: string;
  readonly department?: string;
  readonly designer?: string;
  readonly approver?: string;
  readonly classification?: string;
  readonly language: string;
  readonly supplement?: string;
}

export interface Circuit {
  readonly id: string;
  readonly title: string;
  readonly method?: Method;
  readonly why?: string;
  readonly count: number;
  /** What the parts' drifts follow; absent where nothing drifts. */
  readonly temperature?: Tree;
  readonly inputs: readonly Input[];
  /** How its measured values go together. */
  readonly correlations?: Correlations;
  readonly results: readonly Result[];
  readonly checks: readonly Check[];
  /** When the equations hold. */
  readonly validity: readonly Check[];
  /** Thresholds that must stay in order. */
  readonly orders: readonly Order[];
  readonly firmware: readonly Result[];
  readonly testPoints: readonly TestPoint[];
  readonly plots: readonly {
    readonly of: string;
    readonly over: string;
    readonly limit?: string;
    readonly says?: string;
  }[];
  readonly drawing?: Drawing;
  /** Where it stands in the way of the power current. */
  readonly path?: PathPlace;
  /** Sources by the key under which equations name them. */
  readonly sources: Readonly<Record<string, string>>;
}

/** A station of the power current between pack and motor, with the ids that tell of it. */
export interface PathPlace {
  readonly station: (typeof stations)[number];
  readonly current: string;
  readonly heat?: string;
  readonly temperature?: string;
}

export type Basis = (typeof bases)[number];
export type PartKind = (typeof partKinds)[number];

export interface Input {
  readonly id: string;
  readonly symbol: string;
  readonly says?: string;
  /** Unit in which it is printed. */
  readonly unit: Unit;
  readonly value: InputValue;
  readonly part?: PartKind;
  readonly rating: boolean;
  /** Designators: `R31`. */
  readonly refs?: string;
  readonly from?: string;
  readonly basis?: Basis;
  /** Nobody gave it: the usual value was taken. */
  readonly usual: boolean;
  /** Hazard quantity that it feeds. */
  readonly hazard?: string;
  /** Line of the spec on which it stands, for the trail back. */
  readonly line?: number;
}

export type InputValue =
  /** A range that must be endured. */
  | { readonly kind: 'condition'; readonly quantity: Quantity }
  /** Differs from board to board. */
  | { readonly kind: 'part'; readonly quantity: Quantity; readonly tracks?: Tracking }
  /** The same on every board. */
  | { readonly kind: 'exact'; readonly quantity: Quantity }
  /** Follows from others: a reference is an expression of one symbol. */
  | { readonly kind: 'expression'; readonly tree: Tree; readonly text: string };

/** A matched part: its ratio to another part's value stays within a tolerance of the nominal ratio. */
export interface Tracking {
  readonly of: string;
  readonly within: Quantity;
}

export interface Result {
  readonly id: string;
  readonly symbol: string;
  readonly says: string;
  readonly unit: Unit;
  readonly tree: Tree;
  /** The equation as typed. */
  readonly text: string;
  readonly source?: string;
  readonly heat: boolean;
  readonly stored: boolean;
  readonly load?: string;
  /** Hazard quantity that it feeds: `E_cap`. */
  readonly hazard?: string;
}

export interface Check {
  /** `bus_sense.full_scale` */
  readonly id: string;
  readonly name: string;
  readonly text: string;
  readonly left: Tree;
  readonly right: Tree;
  /** `atMost`: left must not exceed right. */
  readonly sense: 'atMost' | 'atLeast';
  readonly because: string;
  readonly source?: string;
  /** Unit of the limit, in which the slack is printed. */
  readonly unit: Unit;
}

/** Thresholds in rising order; its checks compare each with the next. */
export interface Order {
  readonly name: string;
  readonly because: string;
  /** Check ids, from the lowest pair up. */
  readonly checks: readonly string[];
}

export interface OperatingCase {
  readonly name: string;
  /** Condition id and its range in this case. */
  readonly ranges: ReadonlyMap<string, Quantity>;
}

export interface TestPoint {
  readonly name: string;
  readonly reads: string;
  readonly says?: string;
  readonly when: ReadonlyMap<string, Quantity>;
  readonly step?: (typeof benchSteps)[number];
  /** Half-width at 95 % of the measurement, in the unit of what is read or as a share of it. */
  readonly uncertainty?: Quantity;
}

export type { Action, Decision, Deviation, Requirement, ReviewRecord } from './record.ts';
