import type { SeriesName } from '../quantity/preferred/series.ts';
import type { benchSteps } from '../spec/circuit-schema.ts';
import type { Verification } from '../spec/record.ts';
import type { Fraction } from './statistics.ts';

/**
 * What was found about one revision: plain data that serialises to results.json. Numbers are in the unit stated beside
 * them, at full precision.
 */
export interface Findings {
  readonly format: 'copperplate-results/1';
  readonly board: string;
  readonly revision: string;
  readonly document: string;
  readonly title: string;
  /** As printed: `B`. */
  readonly revision_mark: string;
  readonly status: string;
  /** Date of issue, `2026-03-18`. */
  readonly issued: string;
  /** SHA-256 over the files that the revision was calculated from. */
  readonly inputs_sha256: string;
  readonly tool: string;
  readonly seed: number;
  readonly trials: number;
  /** Whether the number of boards was asked for, or chosen so that the digits printed hold still. */
  readonly trials_chosen: 'by hand' | 'for digits';
  /** What went in, by id: conditions, parts, exact values. */
  readonly inputs: Readonly<Record<string, InputFinding>>;
  readonly results: Readonly<Record<string, ResultFinding>>;
  readonly checks: readonly CheckFinding[];
  /** When the equations hold; these decide nothing, but a board outside carries a mark. */
  readonly validity: readonly CheckFinding[];
  /** Ids of the checks, thinnest margin first. */
  readonly ranking: readonly string[];
  readonly verdict: Verdict;
  /** Fraction of simulated boards on which every check holds at every corner; null when a check was not assessed. */
  readonly yield: Fraction | null;
  /** The thinnest margin with the two conditions that move the margins most held; null where the board has no condition. */
  readonly corners: CornerGrid | null;
  /** Results over one condition, part or result: the plots that the methods ask for. */
  readonly sweeps: readonly SweepFinding[];
  readonly sweeps_left_out: readonly SweepLeftOut[];
  readonly room: readonly RoomFinding[];
  /** Resistors and capacitors against the series of preferred values that their tolerance belongs to. */
  readonly preferred: readonly PreferredFinding[];
  readonly proposals: readonly ProposalFinding[];
  readonly test_points: readonly StimulusFinding[];
  readonly requirements: readonly RequirementFinding[];
  /** What was read on real boards, beside what was predicted. */
  readonly bench: readonly BenchFinding[];
  readonly cautions: readonly CautionFinding[];
  /** What nobody guarantees, by what it may cost; the dearest first. */
  readonly assumptions: readonly AssumptionFinding[];
}

/** One resistor or capacitor against IEC 60063. Values are in `unit`. */
export interface PreferredFinding {
  readonly input: string;
  readonly unit: string;
  readonly value: number;
  /** Half width as a ratio; null where none was stated, and then the coarsest series that holds the value stands. */
  readonly tolerance: number | null;
  readonly series: SeriesName;
  /**
   * `in E24`: not in its own series, but in that one, which is sold at tighter tolerances too. `round shunt`: a value of one
   * digit below ten milliohms, as shunts are made. Both are common practice, no source.
   */
  readonly stands: 'in series' | 'in E24' | 'round shunt' | 'in none';
  /** Values of the series next to it; both the value itself where it belongs to it. */
  readonly below: number;
  readonly above: number;
}

/** The best preferred values for a result that a method names, beside those chosen. Numbers of the result are in `unit`. */
export interface ProposalFinding {
  /** `buck.divider` */
  readonly id: string;
  readonly of: string;
  readonly unit: string;
  readonly target: number;
  readonly chosen: ProposedFinding;
  readonly best: ProposedFinding;
  readonly differs: boolean;
}
export interface ProposedFinding {
  /** By input, each in its own unit. */
  readonly values: Readonly<Record<string, number>>;
  readonly result: number;
  /** Distance from the target as a ratio; null where the target is zero. */
  readonly error: number | null;
  /** The thinnest margin of the circuit's checks that these values move, and which; null where none has a margin. */
  readonly margin: number | null;
  readonly check: string | null;
}

/** How far one part or rating may go before a check fails at worst case, all else as it is. */
export interface RoomFinding {
  readonly input: string;
  readonly unit: string;
  /** A rating: only how low it may go is sought. */
  readonly rating: boolean;
  readonly nominal: number;
  /** Where its nominal value is stopped; null where nothing stops it between a tenth and ten times nominal. */
  readonly low: RoomEnd | null;
  readonly high: RoomEnd | null;
  /** How many times as wide its tolerance may get; null where nothing stops ten times. */
  readonly tolerance: { readonly factor: number; readonly check: string } | null;
}
export interface RoomEnd {
  readonly value: number;
  readonly check: string;
}

/** What a tester reads at a test point with a stated stimulus, on a new board. Numbers are in `unit`. */
export interface StimulusFinding {
  readonly id: string;
  /** Result that is read there. */
  readonly reads: string;
  readonly unit: string;
  readonly when: Readonly<Record<string, { readonly value: number; readonly unit: string }>>;
  readonly expected: number;
  /** No board inside its tolerances reads less, or more. */
  readonly min: number;
  readonly max: number;
  readonly spread: SpreadFinding | null;
  /** Stage of bringing up at which it is read. */
  readonly step: (typeof benchSteps)[number];
  /** Conditions of the board on which it depends and that are not set: they are held at typical. */
  readonly held: Readonly<Record<string, { readonly value: number; readonly unit: string }>>;
  /** What may be accepted with the uncertainty of the measurement; null where none is stated. */
  readonly accept: AcceptFinding | null;
}

/** Test limits: the ends of the prediction with a guard band of the whole uncertainty taken off. */
export interface AcceptFinding {
  /** Half-width at 95 %. */
  readonly uncertainty: number;
  /** These cross where the uncertainty is too large to accept anything. */
  readonly from: number;
  readonly to: number;
  /** Share of good boards that these limits refuse, 0 … 1; null where no part moves the reading. */
  readonly refused: number | null;
}

/** A requirement, how it is shown, and whether anything is still to be shown. */
export interface RequirementFinding {
  readonly id: string;
  readonly methods: readonly Verification[];
  /** Gravest verdict of the checks that show it. */
  readonly verdict: Verdict;
  /** The check with the thinnest margin among them. */
  readonly thinnest: string | null;
  /** Lines of the bench that are evidence for it. */
  readonly readings: readonly string[];
  /** Reopened: a reading lies outside what was predicted. */
  readonly state: 'closed' | 'open' | 'reopened';
  /** What is still to be shown, in words. */
  readonly open: readonly string[];
}

/** One line of bench.csv beside its prediction. Numbers are in `unit`. */
export interface BenchFinding {
  /** `B-1`, in the order of the file. */
  readonly id: string;
  /** Line of bench.csv. */
  readonly line: number;
  /** Test point, or null where a result was read at stated conditions. */
  readonly point: string | null;
  readonly reads: string;
  readonly unit: string;
  readonly when: StimulusFinding['when'];
  readonly measured: number;
  /** Half-width at 95 %. */
  readonly uncertainty: number;
  /** Predicted for a new board: typical, and the ends that no board within its tolerances passes. */
  readonly expected: number;
  readonly min: number;
  readonly max: number;
  /** A reading between these is surely between `min` and `max`; they cross where the uncertainty is too large to tell. */
  readonly accept_from: number;
  readonly accept_to: number;
  /** Difference from the predicted mean in standard deviations of both together; null where neither has any. */
  readonly z: number | null;
  /** Share of the simulated boards that read less; null where no part moves the result. */
  readonly percentile: number | null;
  readonly verdict: BenchVerdict;
  /** Requirements that this reading is evidence for. */
  readonly closes: readonly string[];
  readonly date: string;
  readonly sample?: string;
  readonly instrument?: string;
  readonly by?: string;
  readonly remark?: string;
}
export type BenchVerdict = 'as predicted' | 'unusual' | 'undecided' | 'outside';

/** What a plot is drawn over: a condition, a value that was chosen, or a result that feeds the circuit. */
export type SweepAxis = 'condition' | 'choice' | 'result';

/** One result over one value that is moved from end to end, everything else typical, and at its worst. */
export interface SweepFinding {
  readonly circuit: string;
  /** Result that is drawn; its numbers are in `unit`. */
  readonly of: string;
  readonly unit: string;
  /** Input over which it is drawn, as the method names it; its numbers are in `over_unit`. */
  readonly over: string;
  readonly over_unit: string;
  /** What stands behind that input: a condition, a part, a result of another circuit. */
  readonly stands_for: string;
  readonly axis: SweepAxis;
  /** Where the value stands when everything is typical. */
  readonly over_typical: number;
  /** Check that limits the result here. */
  readonly check?: string;
  /** Unit of `slack`, which is a difference. */
  readonly slack_unit?: string;
  /** Points with rising value, one run for each stretch over which the same operating cases apply. */
  readonly runs: readonly (readonly SweepPoint[])[];
  /** Whether every end of the band was proven to a thousandth of its width. */
  readonly proven: boolean;
  /** The band may be wider by this much at some point; 0 where it is proven. */
  readonly gap: number;
  /** False where the result is not defined, or leaves the range of its data, somewhere along the axis. */
  readonly certain: boolean;
  /** Conditions and parts that act on the axis and on the result, which are taken apart here. */
  readonly apart: readonly string[];
}
/** A plot that a method asks for and this board gives nothing to draw. */
export interface SweepLeftOut {
  readonly circuit: string;
  readonly of: string;
  readonly over: string;
  readonly reason: string;
}
export interface SweepPoint {
  readonly x: number;
  readonly typical: number;
  /** Least and greatest over everything else. */
  readonly min: number;
  readonly max: number;
  /** The limit where it is tightest, in the unit of the result; absent where the check does not compare the bare result. */
  readonly limit?: number;
  /** Least slack of the check. */
  readonly slack?: number;
}

/** Two conditions held low, typical and high; or one, where the board has no second. */
export interface CornerGrid {
  readonly rows: CornerAxis;
  readonly columns: CornerAxis | null;
  /** How many checks one of the two moves by a hundredth of the limit or more; only these stand in the cells. */
  readonly checks: number;
  /** How many they do not move, and the thinnest of those. */
  readonly others: number;
  readonly thinnest_other?: string;
  /** One list for each level of `rows`; null where no operating case holds both levels. */
  readonly cells: readonly (readonly (CornerCell | null)[])[];
}
export interface CornerAxis {
  readonly condition: string;
  readonly unit: string;
  readonly levels: readonly { readonly name: 'low' | 'typical' | 'high'; readonly value: number }[];
}
/** Thinnest margin, everything else at its worst, of the checks that no deviation carries. */
export interface CornerCell {
  readonly check: string;
  readonly margin: number | null;
  readonly worst_slack: number;
  readonly unit: string;
  readonly verdict: Verdict;
}

export type Verdict = 'pass' | 'marginal' | 'fail' | 'accepted' | 'not assessed';

export interface InputFinding {
  readonly unit: string;
  readonly kind: 'condition' | 'part' | 'exact' | 'expression';
  readonly min: number;
  readonly typ: number;
  readonly max: number;
}

export interface ResultFinding {
  readonly unit: string;
  readonly nominal: number;
  readonly worst: WorstFinding;
  readonly rss: { readonly min: number; readonly max: number };
  /** Null for a result that no part moves. */
  readonly spread: SpreadFinding | null;
  /** Share of each input in the variance and in the worst case, largest first; shares below 0.05 % are left out. */
  readonly sensitivity: readonly SensitivityFinding[];
}

/** `min` and `max` are achieved at the corners named; the bounds enclose every value. */
export interface WorstFinding {
  readonly min: number;
  readonly max: number;
  readonly min_bound: number;
  readonly max_bound: number;
  /** The corner: each variable that matters, in its own unit. */
  readonly at_min: Corner;
  readonly at_max: Corner;
  readonly min_case?: string;
  readonly max_case?: string;
  /** Whether achieved value and bound agree to 1e-6 of the range, at either end. */
  readonly proven: boolean;
}
export type Corner = Readonly<Record<string, number>>;

export interface SpreadFinding {
  /** Where the conditions were held. */
  readonly at: Corner;
  readonly mean: number;
  readonly sd: number;
  readonly quantiles: {
    readonly '0.00135': number;
    readonly '0.025': number;
    readonly '0.5': number;
    readonly '0.975': number;
    readonly '0.99865': number;
  };
  /** For each quantile its 95 % confidence interval, from the number of boards alone. */
  readonly quantile_confidence: Readonly<Record<keyof SpreadFinding['quantiles'], readonly [number, number]>>;
  readonly histogram: { readonly from: number; readonly to: number; readonly counts: readonly number[] };
}

export interface SensitivityFinding {
  readonly input: string;
  /** Share of the variance over simulated boards, 0 … 1, to first order. */
  readonly variance: number;
  /** Share of the worst-case swing, 0 … 1. */
  readonly worst: number;
  /** Change of the result when the input goes from its minimum to its maximum, in the unit of the result. */
  readonly swing: number;
}

export interface CheckFinding {
  readonly id: string;
  readonly circuit: string;
  readonly statement: string;
  readonly because: string;
  /** Least slack over everything, achieved; negative where the check fails. Null when it could not be assessed. */
  readonly worst_slack: number | null;
  /** No slack is less than this. */
  readonly worst_slack_bound: number | null;
  readonly at_worst: Corner;
  readonly case?: string;
  readonly unit: string;
  /** The limit at the worst corner, in the unit `limit_unit`. */
  readonly limit: number | null;
  readonly limit_unit: string;
  /** Worst slack over the size of the limit; null when the limit is zero. */
  readonly margin: number | null;
  readonly target: number;
  readonly proven: boolean;
  readonly verdict: Verdict;
  readonly deviation?: string;
  /** Typical slack, and what the simulated boards give at the worst corner of the conditions. */
  readonly nominal_slack: number | null;
  readonly spread: SpreadFinding | null;
  readonly fail_fraction: Fraction | null;
  readonly requirement?: string;
  /** Why it could not be assessed. */
  readonly reason?: string;
}

export interface CautionFinding {
  readonly id: string;
  readonly level: 'danger' | 'warning' | 'caution' | 'notice';
  /** The numbers that raised it, in `unit`; null is unknown. */
  readonly because: Readonly<Record<string, number | null>>;
  readonly unit: string;
}

export interface AssumptionFinding {
  readonly symbol: string;
  readonly value: string;
  readonly basis: 'usual value' | 'typical' | 'assumed';
  /** Null where no check that could be assessed hangs on it. */
  readonly effect: AssumptionEffect | null;
  /** It is the limit of a check and nothing else: agreed, and not found. */
  readonly criterion?: true;
}
/** What an assumption may cost, if it is wrong. */
export interface AssumptionEffect {
  /** How far it is taken to be wrong: half its stated range, or a tenth of it, 5 K of a temperature, where none is stated. */
  readonly off: number;
  /** A share of itself, or kelvin. */
  readonly off_unit: '1' | 'K';
  readonly stated: boolean;
  /** The check whose margin it eats most of, and how much of the limit. */
  readonly check: string;
  readonly margin: number;
}
