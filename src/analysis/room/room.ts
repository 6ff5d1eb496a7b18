import type { JudgedCheck } from '../check-finding.ts';
import type { RoomEnd, RoomFinding } from '../findings.ts';
import type { Model } from '../model.ts';
import { inUnit, printedUnit } from '../units.ts';
import type { Variable } from '../variable.ts';
import type { Box } from '../worst-case/box.ts';
import { crossing } from './limit.ts';
import { type Change, SlackUnder } from './slack.ts';

interface Watched {
  readonly id: string;
  readonly slack: SlackUnder;
}

/** The value may be tried from a tenth to ten times nominal, its tolerance up to ten times as loose. */
const reach = 10;

/**
 * For each part and rating: how far its nominal may move, how loose its tolerance may get, how low its rating may go,
 * before a named check fails at worst case with all else as it is. Checks that fail already, or that a deviation
 * carries, stop nothing.
 */
export function roomsOf(model: Model, judged: readonly JudgedCheck[], boxes: readonly Box[]): RoomFinding[] {
  const holding = judged.filter(
    ({ from, least, reason }) => !from.validity && reason === undefined && least.value >= 0,
  );
  return model.variables.flatMap((variable, v) => {
    if (variable.what !== 'value' || variable.instance !== 1 || variable.role === 'condition') return [];
    const watched = holding
      .filter(({ f }) => f.variables.includes(v))
      .map(
        ({ from, f, least }): Watched => ({
          id: from.check.id,
          slack: new SlackUnder(f, v, boxes, least.at),
        }),
      );
    return watched.length ? [roomOf(variable, watched)] : [];
  });
}

function roomOf(variable: Variable, watched: readonly Watched[]): RoomFinding {
  const { min, typ, max, input } = variable;
  const to = (si: number) => inUnit(si, input.unit);
  const scaled = (factor: number): Change => ({
    min: Math.min(min * factor, max * factor),
    max: Math.max(min * factor, max * factor),
  });
  const loosened = (factor: number): Change => ({
    min: typ - (typ - min) * factor,
    max: typ + (max - typ) * factor,
  });
  const moves = typ !== 0 && input.unit.offset === 0;
  const low = moves ? first(watched, scaled, 1, 1 / reach) : undefined;
  const high = moves && !input.rating ? first(watched, scaled, 1, reach) : undefined;
  const loose = min < max ? first(watched, loosened, 1, reach) : undefined;
  const end = (found: First): RoomEnd => ({ value: to(typ * found.at), check: found.check });
  return {
    input: input.id,
    unit: printedUnit(input.unit),
    rating: input.rating,
    nominal: to(typ),
    low: low ? end(low) : null,
    high: high ? end(high) : null,
    tolerance: loose ? { factor: loose.at, check: loose.check } : null,
  };
}

interface First {
  readonly at: number;
  readonly check: string;
}

/** The check that stops the move first, or undefined when none does within reach. */
function first(
  watched: readonly Watched[],
  change: (factor: number) => Change,
  start: number,
  end: number,
): First | undefined {
  let found: First | undefined;
  for (const { id, slack } of watched) {
    const limit = found ? found.at : end;
    if (
      slack.quick(change(limit)) >= 0 &&
      slack.quick(change(start + (limit - start) / 16)) >= 0 &&
      slack.quick(change(start + (limit - start) / 4)) >= 0
    )
      continue;
    const { at, stops } = crossing((x) => slack.quick(change(x)), start, limit);
    if (stops) found = { at: verified(slack, change, start, at), check: id };
  }
  return found;
}

/** Just inside must hold with the proof, not only at the corners; where it does not, the proof decides where it stops. */
function verified(slack: SlackUnder, change: (factor: number) => Change, start: number, at: number): number {
  const inside = start + (at - start) * (1 - 1e-6);
  if (slack.holds(change(inside))) return at;
  return crossing((x) => (slack.holds(change(x)) ? 1 : -1), start, at).at;
}
