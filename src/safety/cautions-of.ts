import type { CautionFinding } from '../analysis/findings.ts';
import type { Board } from '../spec/board.ts';
import type { Numbers } from './bounds-of.ts';
import { findingOf } from './caution-finding.ts';
import { type Decided, decided } from './decisions.ts';
import { feedingOf } from './fed.ts';
import { filledWords, spokenOf } from './fill.ts';
import { flagsOf } from './flags-of.ts';
import type { CautionRule, SafetyData } from './safety-data.ts';
import { type Level, levels } from './safety-schema.ts';
import { type Solved, solve } from './solve.ts';
import { type HazardTest, testsOf } from './tests-of.ts';
import { type Truth, truthOf } from './truths.ts';

/** A caution as it is printed for one board. */
export interface Caution {
  readonly id: string;
  readonly level: Level;
  readonly hazard: string;
  /** What, and what it does; numbers filled in. */
  readonly text: string;
  /** How to avoid it. */
  readonly precaution: string;
  /** Whether it certainly applies; else it is shown because something is unknown. */
  readonly certain: boolean;
  /** The numbers and facts that raised it, in a sentence without a full stop. */
  readonly reason: string;
  readonly tests: readonly HazardTest[];
  /** Sentences on numbers that stand in for what nobody gave. */
  readonly assumed: readonly string[];
  /** Where it is printed again: key and words. */
  readonly at: readonly Keyed[];
  /** Circuits whose numbers it speaks of; it is printed beside them. */
  readonly circuits: readonly string[];
  readonly sources: readonly { readonly says: string; readonly source?: string; readonly known: string }[];
  readonly reminders: readonly Keyed[];
  readonly decision?: Decided;
}

export interface Keyed {
  readonly key: string;
  readonly says: string;
}

/** One line of the table of every hazard that was considered. */
export interface Considered {
  readonly id: string;
  readonly hazard: string;
  /** Level on this board; that of the tables where it is not shown. */
  readonly level: Level;
  readonly outcome: 'shown' | 'not shown' | 'dismissed';
  /** Whether the trigger holds. */
  readonly truth: Truth;
  readonly tests: readonly HazardTest[];
  readonly reason: string;
  readonly decision?: Decided;
}

export interface Cautions {
  /** For results.json: one for each that is shown. */
  readonly findings: CautionFinding[];
  /** Gravest first, then by id. */
  readonly shown: Caution[];
  /** Every hazard, by id. */
  readonly considered: Considered[];
}

/**
 * The safety cautions of one board from its own worst-case numbers. A caution is shown unless its trigger is certainly
 * false: a number or fact that is missing shows it and is named. Pure.
 * @throws Error, TextError for what `safetyProblems` reports of the same spec
 * @example cautionsOf(board, findings, data).shown[0] // { id: 'S38', level: 'danger', reason: 'no fuse stands in the lead of the pack', … }
 */
export function cautionsOf(board: Board, findings: Numbers, data: SafetyData): Cautions {
  const feeding = feedingOf(board, findings, data);
  const solved = solve(data, feeding, flagsOf(board, feeding, data));
  const considered: Considered[] = [];
  const shown: Caution[] = [];
  for (const rule of data.cautions) {
    const one = consider(rule, board, solved, data);
    considered.push(one);
    if (one.outcome === 'shown') shown.push(cautionOf(rule, one, solved, data));
  }
  shown.sort((a, b) => levels.indexOf(a.level) - levels.indexOf(b.level) || (a.id < b.id ? -1 : 1));
  return { findings: shown.map((caution) => findingOf(caution, solved)), shown, considered };
}

function consider(rule: CautionRule, board: Board, solved: Solved, data: SafetyData): Considered {
  const truth = rule.trigger ? truthOf(rule.trigger, solved.known) : 'yes';
  const tests = rule.trigger ? testsOf(rule.trigger, solved, data) : [];
  const made = board.cautions.find(({ id }) => id === rule.id);
  const { level, decision } = decided(made, rule.level, rule.mayBeDismissed);
  return {
    id: rule.id,
    hazard: rule.hazard,
    level: truth === 'no' ? rule.level : (level ?? rule.level),
    truth,
    tests,
    reason: reasonOf(truth, tests),
    outcome: truth === 'no' ? 'not shown' : level ? 'shown' : 'dismissed',
    ...(decision ? { decision } : {}),
  };
}

function reasonOf(truth: Truth, tests: readonly HazardTest[]): string {
  if (!tests.length) return 'always shown';
  const says = [...new Set(tests.map((test) => test.says))].join('; ');
  return truth === 'unknown' ? `shown because ${says}` : says;
}

function cautionOf(
  rule: CautionRule,
  { level, truth, tests, reason, decision }: Considered,
  solved: Solved,
  data: SafetyData,
): Caution {
  const { text, precaution } = filledWords(rule, solved.values);
  const names = new Set([...tests.flatMap(({ symbols }) => symbols), ...spokenOf(rule, solved.values)]);
  const values = [...names].flatMap((name) => solved.values.get(name) ?? []);
  const keyed = (keys: readonly string[], table: Readonly<Record<string, string>>) =>
    keys.map((key) => ({ key, says: table[key]! }));
  return {
    id: rule.id,
    level,
    hazard: rule.hazard,
    text,
    precaution,
    certain: truth === 'yes',
    reason,
    tests,
    assumed: [...new Map(values.flatMap((value) => [...value.assumed]))].map(([symbol, why]) => `${symbol}: ${why}`),
    at: keyed(rule.at, data.places),
    circuits: [...new Set(values.flatMap(({ circuits }) => circuits))],
    sources: rule.sources.map(({ says, from, known }) => ({
      says,
      known,
      ...(from ? { source: data.sources[from]! } : {}),
    })),
    reminders: keyed(rule.reminders, data.reminders),
    ...(decision ? { decision } : {}),
  };
}
