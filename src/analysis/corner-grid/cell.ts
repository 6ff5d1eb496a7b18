import type { JudgedCheck } from '../check-finding.ts';
import type { CornerCell } from '../findings.ts';
import type { Model } from '../model.ts';
import { differenceInUnit, differenceUnit, inUnit, printedUnit } from '../units.ts';
import { verdictOn } from '../verdict.ts';
import { type Box, within } from '../worst-case/box.ts';
import type { BoardFunction } from '../worst-case/function.ts';
import { neverBelow } from '../worst-case/never-below.ts';
import { cornersAlone, type Found, type Least, search } from './least.ts';

/** What a cell is sought with. */
export interface CornerSetting {
  readonly model: Model;
  readonly boxes: readonly Box[];
  readonly typical: Float64Array;
  readonly target: number;
}

/** A condition and where it is held. SI base units. */
export interface Held {
  readonly variable: number;
  readonly value: number;
}

export interface Watched {
  readonly one: JudgedCheck;
  readonly limit: BoardFunction;
}

/** A slack where the limit is zero stands for its own sign alone. */
export const marginOf = ({ margin, least }: JudgedCheck): number => margin ?? (least.value < 0 ? -1 : 1);

/**
 * No margin in a corner is thinner than over all corners together, as long as the limit stays the same; so the search ends
 * at the first check that is not thinner even there.
 */
export function thinnestAt(
  setting: CornerSetting,
  ordered: readonly Watched[],
  held: readonly Held[],
  seek: Least,
): CornerCell | null {
  const boxes = setting.boxes.flatMap((box) => {
    const holds = held.every(({ variable, value }) => box.lo[variable]! <= value && box.hi[variable]! >= value);
    return holds ? [pinned(box, held)] : [];
  });
  if (!boxes.length) return null;
  let thinnest: { rank: number; cell: CornerCell } | undefined;
  for (const { one, limit } of likelyFirst(ordered, boxes)) {
    if (thinnest) {
      if (limit.variables.length === 0 && marginOf(one) >= thinnest.rank) continue;
      if (neverBelow(one.f, boxes, one.least.at, slackFor(thinnest.rank, one, limit, boxes), search.budget)) continue;
    }
    const least = seek(one.f, boxes, one.least.at);
    if (!Number.isFinite(least.value)) continue;
    const cell = cellOf(setting, one, limit, least);
    const rank = cell.margin ?? (cell.worst_slack < 0 ? -1 : 1);
    if (!thinnest || rank < thinnest.rank) thinnest = { rank, cell };
  }
  return thinnest?.cell ?? null;
}

/** With this slack a check has at least this margin, wherever its limit lies. SI base units. */
function slackFor(margin: number, { from }: JudgedCheck, limit: BoardFunction, boxes: readonly Box[]): number {
  const { unit } = from.check;
  const sizes = boxes.flatMap((box) => {
    const { lo: low, hi: high } = limit.range(within(box, limit.variables));
    const ends = [low, high].map((si) => Math.abs(inUnit(si, unit)));
    return inUnit(low, unit) <= 0 && inUnit(high, unit) >= 0 ? [0, ...ends] : ends;
  });
  return margin * unit.scale * (margin > 0 ? Math.max(...sizes) : Math.min(...sizes));
}

/** By where slopes lead: the sooner the thinnest is found, the more of the others need only be proven thicker. */
const likelyFirst = (ordered: readonly Watched[], boxes: readonly Box[]): Watched[] =>
  ordered
    .map((watched) => {
      const { f, least, limit, from } = watched.one;
      const size = Math.abs(inUnit(limit, from.check.unit)) * from.check.unit.scale;
      return { watched, rank: cornersAlone(f, boxes, least.at).value / size };
    })
    .sort((a, b) => a.rank - b.rank)
    .map(({ watched }) => watched);

const pinned = (box: Box, held: readonly Held[]): Box => ({
  ...box,
  lo: held.reduce((lo, { variable, value }) => lo.with(variable, value), box.lo),
  hi: held.reduce((hi, { variable, value }) => hi.with(variable, value), box.hi),
});

function cellOf(
  { target }: CornerSetting,
  { from, least: whole }: JudgedCheck,
  limiting: BoardFunction,
  least: Found,
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
