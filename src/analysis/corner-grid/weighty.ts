import type { JudgedCheck } from '../check-finding.ts';
import type { Model } from '../model.ts';
import { SlackUnder } from '../room/slack.ts';
import { differenceInUnit, inUnit } from '../units.ts';
import { type Box, endsOf } from '../worst-case/box.ts';

/**
 * Conditions by how far they move the margins, farthest first; those that move none are left out. Each check counts by
 * what its worst margin changes when the condition goes from end to end, at most by its whole limit, and a thin check counts for more than one with room.
 * @returns indices of variables
 */
export function weightyConditions(model: Model, judged: readonly JudgedCheck[], boxes: readonly Box[]): number[] {
  return model.variables
    .flatMap(({ role }, v) => (role === 'condition' ? [v] : []))
    .map((v) => ({ v, weight: judged.reduce((sum, one) => sum + weightOn(one, v, boxes), 0) }))
    .filter(({ weight }) => weight > 1e-9)
    .sort((a, b) => b.weight - a.weight)
    .map(({ v }) => v);
}

function weightOn(check: JudgedCheck, v: number, boxes: readonly Box[]): number {
  return movedBy(check, v, boxes) / (1 + Math.max(0, check.margin ?? 0) / thin);
}

/** A check with this margin counts half as much as one with none. */
const thin = 0.1;

/**
 * How far the worst margin of a check moves when a condition goes from end to end, as a share of the limit; at most 1, and 0
 * where there is no margin.
 */
export function movedBy(check: JudgedCheck, v: number, boxes: readonly Box[]): number {
  const { f, least, limit, margin, from, reason } = check;
  if (!f.variables.includes(v) || margin === null || reason !== undefined || from.validity) return 0;
  const slackAt = (x: number): number => {
    const holding = boxes.filter(({ lo, hi }) => lo[v]! <= x && hi[v]! >= x);
    return new SlackUnder(f, v, holding, least.at).quick({ min: x, max: x });
  };
  const [low, high] = endsOf(boxes, v);
  const moved = Math.abs(differenceInUnit(slackAt(high) - slackAt(low), from.check.unit));
  const share = moved / Math.abs(inUnit(limit, from.check.unit));
  return Number.isFinite(share) ? Math.min(1, share) : 0;
}
