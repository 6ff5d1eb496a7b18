import type { Result } from '../spec/board.ts';
import { mentioned } from '../spec/names.ts';
import type { JudgedCheck } from './check-finding.ts';
import { conditionsOf, cornerOf } from './corner-of.ts';
import { coefficientsOf } from './correlation.ts';
import type { ResultFinding } from './findings.ts';
import type { Model } from './model.ts';
import { influences, rootSumSquare } from './sensitivity.ts';
import type { Spread } from './simulate/spread.ts';
import { spreadFinding } from './spread-finding.ts';
import { differenceInUnit, inUnit, printedUnit } from './units.ts';
import type { Box } from './worst-case/box.ts';
import { type Extreme, Search } from './worst-case/extremes.ts';
import { BoardFunction } from './worst-case/function.ts';

/** A result whose worst case has been sought. SI base units. */
export interface SearchedResult {
  readonly result: Result;
  readonly nominal: number;
  readonly min: Extreme;
  readonly max: Extreme;
  readonly f: BoardFunction;
  point?: Float64Array;
}

export function searchResult(
  model: Model,
  result: Result,
  boxes: readonly Box[],
  typical: Float64Array,
  nominal: Float64Array,
): SearchedResult {
  const slot = model.slots.get(result.id)!;
  const search = new Search(new BoardFunction(model.tape, slot), boxes, typical);
  return { result, nominal: nominal[slot]!, min: search.min(), max: search.max(), f: search.f };
}

/**
 * Where the conditions are held when a result is simulated: at the worst corner of the thinnest check that mentions it,
 * or where the result is greatest if none does.
 */
export function referencePoint(searched: SearchedResult, judged: readonly JudgedCheck[]): Float64Array {
  if (searched.point) return searched.point;
  const { id } = searched.result;
  const checks = judged.filter(
    ({ from }) => !from.validity && [from.check.left, from.check.right].some((side) => mentioned(side).has(id)),
  );
  const thinnest = checks.toSorted((a, b) => (a.margin ?? a.least.value) - (b.margin ?? b.least.value))[0];
  searched.point = thinnest?.least.at ?? searched.max.at;
  return searched.point;
}

export function resultFinding(model: Model, searched: SearchedResult, spread: Spread): ResultFinding {
  const { result, nominal, min, max, f } = searched;
  const { variables } = model;
  const coefficient = coefficientsOf(model.correlated);
  const point = searched.point ?? max.at;
  const to = (si: number) => inUnit(si, result.unit);
  const rss = rootSumSquare(f, variables, point, coefficient);
  return {
    unit: printedUnit(result.unit),
    nominal: to(nominal),
    worst: {
      min: to(min.value),
      max: to(max.value),
      min_bound: to(min.bound),
      max_bound: to(max.bound),
      at_min: cornerOf(variables, f.variables, min.at),
      at_max: cornerOf(variables, f.variables, max.at),
      ...(min.case ? { min_case: min.case } : {}),
      ...(max.case ? { max_case: max.case } : {}),
      proven: min.proven && max.proven && min.certain && max.certain,
    },
    rss: { min: to(rss.min), max: to(rss.max) },
    spread: spreadFinding(spread, conditionsOf(variables, f.variables, point), result.unit, inUnit),
    sensitivity: influences(f, variables, point, coefficient)
      .filter(({ variance, worst }) => variance >= 5e-4 || worst >= 5e-4)
      .map(({ input, variance, worst, swing }) => ({
        input,
        variance,
        worst,
        swing: differenceInUnit(swing, result.unit),
      })),
  };
}
