import type { Findings } from '../analysis/findings.ts';
import type { Interval } from '../expression/interval.ts';
import { addRanges, multiplyRanges, point, range } from '../expression/ranges.ts';
import { parseUnit } from '../quantity/units.ts';
import type { Board, Circuit, Input } from '../spec/board.ts';
import { settledIn } from './settled.ts';
import { rangeOf } from './truths.ts';

/** 25 °C, to which drifts are stated. */
const REFERENCE = 298.15;
const NOTHING: Interval = { lo: -Infinity, hi: Infinity, certain: false };

export type Numbers = Pick<Findings, 'results' | 'inputs'>;

/**
 * Bounds of inputs and results by id, in SI base units. Results have their proven worst case; an input that is an
 * expression is enclosed from those it mentions, as nothing but its typical value is found for it; a part is widened by
 * its drift and ageing. What has no number is open on both sides.
 */
export function boundsOf(board: Board, findings: Numbers): (id: string) => Interval {
  const inputs = new Map<string, { input: Input; circuit?: Circuit }>();
  for (const input of [...board.conditions, ...board.derating]) inputs.set(input.id, { input });
  for (const circuit of board.circuits) for (const input of circuit.inputs) inputs.set(input.id, { input, circuit });
  const known = new Map<string, Interval>();
  const bounds = (id: string): Interval => {
    const before = known.get(id);
    if (before) return before;
    const found = inputs.get(id);
    const now = found ? ofInput(found.input, found.circuit, findings, bounds) : ofResult(id, findings);
    known.set(id, now);
    return now;
  };
  return bounds;
}

function ofResult(id: string, { results }: Numbers): Interval {
  const result = Object.hasOwn(results, id) ? results[id]! : undefined;
  if (!result) return NOTHING;
  const { min_bound, max_bound } = result.worst;
  return between(min_bound, max_bound, result.unit);
}

function ofInput(
  input: Input,
  circuit: Circuit | undefined,
  findings: Numbers,
  bounds: (id: string) => Interval,
): Interval {
  const { value } = input;
  if (value.kind === 'expression') return rangeOf(value.tree, bounds);
  const found = Object.hasOwn(findings.inputs, input.id) ? findings.inputs[input.id]! : undefined;
  const initial = found ? between(found.min, found.max, found.unit) : range(value.quantity.min, value.quantity.max);
  return value.kind === 'part' ? widened(initial, input, circuit, bounds) : initial;
}

/** A number that is not finite was written as null where findings were kept, and is not known. */
function between(min: number | null, max: number | null, unit: string): Interval {
  const of = parseUnit(unit);
  const lo = min === null || Number.isNaN(min) ? -Infinity : settledIn(min, of);
  const hi = max === null || Number.isNaN(max) ? Infinity : settledIn(max, of);
  return range(lo, hi, Number.isFinite(lo) && Number.isFinite(hi));
}

/** (initial × (1 + drift · kelvins) + drift in its own unit · kelvins) × (1 + ageing). */
function widened(
  initial: Interval,
  input: Input,
  circuit: Circuit | undefined,
  bounds: (id: string) => Interval,
): Interval {
  if (input.value.kind !== 'part') return initial;
  const { drift, driftAbsolute, ageing } = input.value.quantity;
  const temperature =
    (drift || driftAbsolute) && circuit?.temperature ? rangeOf(circuit.temperature, bounds) : point(REFERENCE);
  const kelvins = addRanges(temperature, point(-REFERENCE));
  const more = (band: { min: number; max: number } | undefined): Interval =>
    band ? range(band.min, band.max) : point(0);
  const drifted = addRanges(
    multiplyRanges(initial, addRanges(point(1), multiplyRanges(more(drift), kelvins))),
    multiplyRanges(more(driftAbsolute), kelvins),
  );
  return drift || driftAbsolute || ageing ? multiplyRanges(drifted, addRanges(point(1), more(ageing))) : initial;
}
