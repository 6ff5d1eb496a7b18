import type { Unit } from '../quantity/unit.ts';
import type { Board, Deviation } from '../spec/board.ts';
import { conditionsOf, cornerOf } from './corner-of.ts';
import type { CheckFinding } from './findings.ts';
import type { Model, ModelCheck } from './model.ts';
import type { Spread } from './simulate/spread.ts';
import { spreadFinding } from './spread-finding.ts';
import { clopperPearson } from './statistics.ts';
import { differenceInUnit, differenceUnit, inUnit, printedUnit } from './units.ts';
import { verdictOn } from './verdict.ts';
import type { Box } from './worst-case/box.ts';
import { type Extreme, Search } from './worst-case/extremes.ts';
import { BoardFunction } from './worst-case/function.ts';

/** A check whose least slack has been sought. SI base units. */
export interface JudgedCheck {
  readonly from: ModelCheck;
  readonly nominal: number;
  readonly least: Extreme;
  readonly f: BoardFunction;
  /** The limit at the worst corner. */
  readonly limit: number;
  /** Least slack over the size of the limit, in the limit's unit; null when the limit is zero. */
  readonly margin: number | null;
  /** Why it cannot be judged. */
  readonly reason?: string;
}

export function judge(
  model: Model,
  from: ModelCheck,
  boxes: readonly Box[],
  typical: Float64Array,
  nominal: Float64Array,
): JudgedCheck {
  const search = new Search(new BoardFunction(model.tape, from.slack), boxes, typical);
  const least = settled(search.min(), Math.abs(nominal[from.limit]!));
  const limiting = new BoardFunction(model.tape, from.limit);
  const limit = limiting.value(Float64Array.from(limiting.variables, (v) => least.at[v]!));
  const size = Math.abs(inUnit(limit, from.check.unit));
  const margin = size > 0 ? differenceInUnit(least.value, from.check.unit) / size : null;
  const reason = reasonAgainst(least);
  return { from, nominal: nominal[from.slack]!, least, f: search.f, limit, margin, ...(reason ? { reason } : {}) };
}

/** A slack that only the rounding of its two sides keeps from zero is zero: 10 V is within a limit of 10 V. */
function settled(least: Extreme, size: number): Extreme {
  const blur = 1e-13 * size;
  const clean = (x: number) => (Math.abs(x) <= blur ? 0 : x);
  return { ...least, value: clean(least.value), bound: clean(least.bound) };
}

function reasonAgainst(least: Extreme): string | undefined {
  if (!Number.isFinite(least.value)) return 'it is not defined at some corner';
  if (!least.certain) return 'it leaves the range of its data, or is not defined, somewhere in the ranges to endure';
  return undefined;
}

export const deviationFor = (board: Board, { from }: JudgedCheck): Deviation | undefined =>
  board.deviations.find(({ check }) => check === from.check.id);

export function checkFinding(
  board: Board,
  model: Model,
  judged: JudgedCheck,
  spread: Spread,
  failures: number,
  trials: number,
): CheckFinding {
  const { from, least, f, limit, margin, nominal, reason } = judged;
  const { check, circuit } = from;
  const unit: Unit = differenceUnit(check.unit);
  const slack = (si: number) => differenceInUnit(si, unit);
  const deviation = least.value < 0 ? deviationFor(board, judged) : undefined;
  const requirement = board.requirements.find(({ shownBy }) => shownBy.includes(check.id))?.id;
  const assessed = reason === undefined;
  return {
    id: check.id,
    circuit: circuit.id,
    statement: check.text,
    because: check.because,
    worst_slack: assessed ? slack(least.value) : null,
    worst_slack_bound: assessed ? slack(least.bound) : null,
    at_worst: cornerOf(model.variables, f.variables, least.at),
    ...(least.case ? { case: least.case } : {}),
    unit: printedUnit(unit),
    limit: assessed ? inUnit(limit, check.unit) : null,
    limit_unit: printedUnit(check.unit),
    margin: assessed ? margin : null,
    target: board.target,
    proven: least.proven,
    verdict: assessed
      ? verdictOn(least.value, least.bound, margin, board.target, deviation !== undefined)
      : 'not assessed',
    ...(deviation ? { deviation: deviation.id } : {}),
    nominal_slack: Number.isFinite(nominal) ? slack(nominal) : null,
    spread: assessed
      ? spreadFinding(spread, conditionsOf(model.variables, f.variables, least.at), unit, differenceInUnit)
      : null,
    fail_fraction: assessed ? clopperPearson(failures, trials) : null,
    ...(requirement ? { requirement } : {}),
    ...(reason ? { reason } : {}),
  };
}
