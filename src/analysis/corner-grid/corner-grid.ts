import type { JudgedCheck } from '../check-finding.ts';
import type { CornerAxis, CornerCell, CornerGrid } from '../findings.ts';
import { printedUnit, toPrinted } from '../units.ts';
import { endsOf } from '../worst-case/box.ts';
import { BoardFunction } from '../worst-case/function.ts';
import { type CornerSetting, type Held, marginOf, thinnestAt, type Watched } from './cell.ts';
import { cornersAlone, type Least, provenLeast } from './least.ts';
import { movedBy, weightyConditions } from './weighty.ts';

/** A margin that a condition moves by less than this share of the limit does not count as moved. */
const noticeable = 0.01;

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
  const [second] = more
    .slice(0, tried)
    .map((v) => ({ v, variation: variation(gridOver(setting, judged, first, v, cornersAlone)) }))
    .reduce<{ v: number; variation: number }[]>(
      ([best], next) => [best && best.variation >= next.variation ? best : next],
      [],
    );
  return gridOver(setting, judged, first, second?.v, provenLeast);
}

function gridOver(
  setting: CornerSetting,
  judged: readonly JudgedCheck[],
  first: number,
  second: number | undefined,
  seek: Least,
): CornerGrid {
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
  const cell = (held: readonly Held[]): CornerCell | null => thinnestAt(setting, watched, held, seek);
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
