import type { JudgedCheck } from '../check-finding.ts';
import type { CornerAxis, CornerCell, CornerGrid } from '../findings.ts';
import type { Model } from '../model.ts';
import { differenceInUnit, differenceUnit, inUnit, printedUnit, toPrinted } from '../units.ts';
import { verdictOn } from '../verdict.ts';
import type { Box } from '../worst-case/box.ts';
import { type Extreme, Search } from '../worst-case/extremes.ts';
import { BoardFunction } from '../worst-case/function.ts';
import { endsOf, movedBy, weightyConditions } from './weighty.ts';

/** What a cell is sought with. */
export interface CornerSetting {
  readonly model: Model;
  readonly boxes: readonly Box[];
  readonly typical: Float64Array;
  readonly target: number;
}

/** A margin that a condition moves by less than this share of the limit does not count as moved. */
const noticeable = 0.01;

/** A margin is printed to a tenth of a per cent; the proof over all corners together stands behind every cell. */
const search = { tolerance: 1e-4, budget: 200 };

interface Held {
  readonly variable: number;
  readonly value: number;
}

/** How many of the conditions that move margins most are tried beside the first one. */
const tried = 3;

/**
 * The thinnest margin in each corner of two conditions, everything else at its worst, among the checks that one of the two
 * moves; the others keep their margins whatever these do. The first condition is the one that moves the margins most, the
 * second the one that then moves the thinnest margin most.
 * @param judged  the checks that count on this board
 * @returns null where no condition moves a margin
 */
export function cornerGridOf(setting: CornerSetting, judged: readonly JudgedCheck[]): CornerGrid | null {
  const [first, ...more] = weightyConditions(setting.model, judged, setting.boxes);
  if (first === undefined) return null;
  const grids = more.slice(0, tried).map((second) => gridOver(setting, judged, first, second));
  if (!grids.length) return gridOver(setting, judged, first);
  return grids.reduce((best, next) => (variation(next) > variation(best) ? next : best));
}

function gridOver(setting: CornerSetting, judged: readonly JudgedCheck[], first: number, second?: number): CornerGrid {
  const { model, boxes } = setting;
  const counted = judged.filter(({ reason, from }) => reason === undefined && !from.validity);
  const moves = (one: JudgedCheck): boolean =>
    [first, second].some((v) => v !== undefined && movedBy(one, v, boxes) >= noticeable);
  const [ordered, others] = [true, false].map((wanted) =>
    counted.filter((one) => moves(one) === wanted).sort((a, b) => marginOf(a) - marginOf(b)),
  ) as [JudgedCheck[], JudgedCheck[]];
  const watched = ordered.map((one): Watched => ({ one, limit: new BoardFunction(model.tape, one.from.limit) }));
  const rows = axisOf(setting, first);
  const columns = second === undefined ? null : axisOf(setting, second);
  const cell = (held: readonly Held[]): CornerCell | null => thinnestAt(setting, watched, held);
  return {
    rows: rows.axis,
    columns: columns?.axis ?? null,
    checks: ordered.length,
    others: others.length,
    ...(others[0] ? { thinnest_other: others[0].from.check.id } : {}),
    cells: rows.held.map((row) => (columns ? columns.held.map((column) => cell([row, column])) : [cell([row])])),
  };
}

/** How far the second condition moves the thinnest margin, added up over the levels of the first. */
function variation({ cells }: CornerGrid): number {
  return cells.reduce((sum, row) => {
    const margins = row.flatMap((cell) => cell?.margin ?? []);
    return margins.length ? sum + Math.min(1, Math.max(...margins) - Math.min(...margins)) : sum;
  }, 0);
}

function axisOf({ model, boxes }: CornerSetting, v: number): { axis: CornerAxis; held: Held[] } {
  const variable = model.variables[v]!;
  const [low, high] = endsOf(boxes, v);
  const between = variable.typ > low && variable.typ < high;
  const levels = [
    { name: 'low' as const, at: low },
    ...(between ? [{ name: 'typical' as const, at: variable.typ }] : []),
    { name: 'high' as const, at: high },
  ];
  return {
    axis: {
      condition: variable.id,
      unit: printedUnit(variable.input.unit),
      levels: levels.map(({ name, at }) => ({ name, value: toPrinted(variable, at) })),
    },
    held: levels.map(({ at }) => ({ variable: v, value: at })),
  };
}

interface Watched {
  readonly one: JudgedCheck;
  readonly limit: BoardFunction;
}

/** A slack where the limit is zero stands for its own sign alone. */
const marginOf = ({ margin, least }: JudgedCheck): number => margin ?? (least.value < 0 ? -1 : 1);

/**
 * No margin in a corner is thinner than over all corners together, as long as the limit stays the same; so the search ends
 * at the first check that is not thinner even there.
 */
function thinnestAt(setting: CornerSetting, ordered: readonly Watched[], held: readonly Held[]): CornerCell | null {
  const boxes = setting.boxes.flatMap((box) => {
    const holds = held.every(({ variable, value }) => box.lo[variable]! <= value && box.hi[variable]! >= value);
    return holds ? [pinned(box, held)] : [];
  });
  if (!boxes.length) return null;
  let thinnest: { rank: number; cell: CornerCell } | undefined;
  for (const { one, limit } of ordered) {
    if (thinnest && limit.variables.length === 0 && marginOf(one) >= thinnest.rank) continue;
    const least = new Search(one.f, boxes, setting.typical, search).min();
    if (!Number.isFinite(least.value)) continue;
    const cell = cellOf(setting, one, limit, least);
    const rank = cell.margin ?? (cell.worst_slack < 0 ? -1 : 1);
    if (!thinnest || rank < thinnest.rank) thinnest = { rank, cell };
  }
  return thinnest?.cell ?? null;
}

const pinned = (box: Box, held: readonly Held[]): Box => ({
  ...box,
  lo: held.reduce((lo, { variable, value }) => lo.with(variable, value), box.lo),
  hi: held.reduce((hi, { variable, value }) => hi.with(variable, value), box.hi),
});

function cellOf(
  { target }: CornerSetting,
  { from, least: whole }: JudgedCheck,
  limiting: BoardFunction,
  least: Extreme,
): CornerCell {
  const { check } = from;
  const limit = limiting.value(Float64Array.from(limiting.variables, (v) => least.at[v]!));
  const size = Math.abs(inUnit(limit, check.unit));
  const slack = Math.abs(least.value) <= 1e-13 * Math.abs(limit) ? 0 : least.value;
  const margin = size > 0 ? differenceInUnit(slack, check.unit) / size : null;
  return {
    check: check.id,
    margin,
    worst_slack: differenceInUnit(slack, check.unit),
    unit: printedUnit(differenceUnit(check.unit)),
    verdict: verdictOn(slack, Math.max(least.bound, whole.bound), margin, target, false),
  };
}
