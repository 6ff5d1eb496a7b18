import type { CheckFinding } from '../analysis/findings.ts';
import { valuesAt } from '../analysis/values-at.ts';
import type { Considered } from '../safety/cautions-of.ts';
import type { Check, Circuit, Input, Result } from '../spec/board.ts';
import type { Caution } from './block.ts';
import { byId, inputsOf, type Reviewed } from './by-id.ts';
import { type Changes, changesBetween, noChanges } from './changes.ts';
import { type Trail, trailOf } from './trail.ts';

export interface PacketOptions {
  /** The revision that this one replaces. */
  readonly previous?: Reviewed;
  /** Safety cautions in words, gravest first. */
  readonly cautions?: readonly Caution[];
  /** Every hazard that was looked at, shown or not. */
  readonly considered?: readonly Considered[];
}

/** Everything that chapters look things up in. */
export interface Review extends Reviewed {
  readonly previous?: Reviewed;
  readonly cautions: readonly Caution[];
  readonly considered: readonly Considered[];
  readonly changes: Changes;
  readonly circuits: ReadonlyMap<string, Circuit>;
  /** Conditions, derating factors and what circuits are given, by id. */
  readonly inputs: ReadonlyMap<string, Input>;
  /** What circuits find, firmware constants and sums of the board, by id. */
  readonly results: ReadonlyMap<string, Result>;
  readonly checks: ReadonlyMap<string, Check>;
  readonly judged: ReadonlyMap<string, CheckFinding>;
  readonly trail: Trail;
  /** Typical value of every input and result, SI base units. */
  readonly typical: ReadonlyMap<string, number>;
}

export function reviewOf(
  { board, findings }: Reviewed,
  { previous, cautions = [], considered = [] }: PacketOptions,
): Review {
  return {
    board,
    findings,
    cautions,
    considered,
    ...(previous ? { previous } : {}),
    changes: previous ? changesBetween(previous, { board, findings }) : noChanges,
    circuits: byId(board.circuits),
    inputs: inputsOf(board),
    results: byId([...board.circuits.flatMap(({ results, firmware }) => [...results, ...firmware]), ...board.totals]),
    checks: byId(board.circuits.flatMap(({ checks, validity }) => [...checks, ...validity])),
    judged: byId([...findings.checks, ...findings.validity]),
    trail: trailOf(board),
    typical: valuesAt(board, {}),
  };
}

/** The checks as ranked, thinnest margin first. */
export const rankedChecks = ({ findings, judged }: Review): CheckFinding[] =>
  findings.ranking.map((id) => judged.get(id)!);

/** Checks of one circuit in the order of the method. */
export const checksOf = ({ judged }: Review, circuit: Circuit): CheckFinding[] =>
  circuit.checks.map(({ id }) => judged.get(id)!);
