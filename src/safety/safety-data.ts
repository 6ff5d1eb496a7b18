import type { Tree } from '../expression/tree.ts';
import type { Unit } from '../quantity/unit.ts';
import type { CautionEntry, Level, QuantityEntry } from './safety-schema.ts';

/** The cautions and all that they lean on, read and found sound: every name known, every equation of its dimension. */
export interface SafetyData {
  /** By id. */
  readonly cautions: readonly CautionRule[];
  /** In an order in which each can be worked out after those it needs. */
  readonly quantities: ReadonlyMap<string, HazardQuantity>;
  readonly flags: ReadonlyMap<string, HazardFlag>;
  readonly places: Readonly<Record<string, string>>;
  readonly reminders: Readonly<Record<string, string>>;
  readonly sources: Readonly<Record<string, string>>;
}

/** Facts stand in trees as comparisons `has_pack > 0.5` of the numbers 0 and 1. */
export interface CautionRule {
  readonly id: string;
  readonly level: Level;
  readonly hazard: string;
  /** Absent where the caution is always shown. */
  readonly trigger?: Tree;
  readonly words: Words;
  readonly ifEndless: Partial<Words>;
  readonly ifUnknown: Partial<Words>;
  readonly at: readonly string[];
  readonly sources: CautionEntry['sources'];
  readonly reminders: readonly string[];
  readonly mayBeDismissed: boolean;
}

export interface Words {
  readonly text: string;
  readonly precaution: string;
}

export interface HazardQuantity extends Pick<QuantityEntry, 'says' | 'danger' | 'several' | 'assumed' | 'unknown'> {
  readonly symbol: string;
  readonly unit: Unit;
  /** Name under which circuits and the spec feed it. */
  readonly tag: string;
  readonly condition?: string;
  readonly equals?: Tree;
  readonly zeroWhen?: Tree;
  readonly infiniteWhen?: Tree;
  readonly default?: { readonly si: number; readonly why: string };
  readonly digits: number;
  readonly endless: string;
}

export interface HazardFlag {
  readonly symbol: string;
  readonly yes: string;
  readonly no: string;
  /** Quantities whose being given by a circuit proves the fact. */
  readonly provenBy: readonly string[];
}
