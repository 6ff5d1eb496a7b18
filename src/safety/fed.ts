import type { Interval } from '../expression/interval.ts';
import { same } from '../quantity/dimension.ts';
import type { Board } from '../spec/board.ts';
import { boundsOf, type Numbers } from './bounds-of.ts';
import { readNumber } from './facts.ts';
import type { HazardQuantity, SafetyData } from './safety-data.ts';

/** One source of a hazard quantity. */
export interface Fed {
  /** Id of the result or input, or `safety.t_hold` for a fact of the spec. */
  readonly id: string;
  readonly circuit?: string;
  readonly bounds: Interval;
  /** How many alike stand on the board. */
  readonly count: number;
}

/** Sources by the tag that they carry. */
export type Feeding = ReadonlyMap<string, readonly Fed[]>;

/**
 * Collects what circuits, conditions and the spec say of each hazard quantity. An input that took its usual value because
 * the spec is silent is left out: nobody gave that number.
 * @throws Error when a tag is no quantity of the tables or has another dimension; TextError for a fact that cannot be
 *   read. `safetyProblems` reports all of these beforehand, each at its place.
 */
export function feedingOf(board: Board, findings: Numbers, data: SafetyData): Feeding {
  const byTag = new Map<string, HazardQuantity>(
    [...data.quantities.values()].map((quantity) => [quantity.tag, quantity]),
  );
  const bounds = boundsOf(board, findings);
  const sources = new Map<string, Fed[]>();
  const add = (tag: string, one: Fed) => sources.set(tag, [...(sources.get(tag) ?? []), one]);
  for (const circuit of board.circuits) {
    for (const entry of [...circuit.inputs, ...circuit.results]) {
      if (entry.hazard === undefined) continue;
      const quantity = byTag.get(entry.hazard);
      if (!quantity) throw new Error(`${entry.id} feeds ${entry.hazard}, which is no hazard quantity.`);
      if (!same(quantity.unit.dimension, entry.unit.dimension))
        throw new Error(
          `${entry.id} is in ${entry.unit.text}, but feeds ${entry.hazard}, which is in ${quantity.unit.text}.`,
        );
      if ('usual' in entry && entry.usual) continue;
      add(entry.hazard, { id: entry.id, circuit: circuit.id, bounds: bounds(entry.id), count: circuit.count });
    }
  }
  for (const { tag, unit, condition } of data.quantities.values()) {
    const given = board.conditions.find(({ id }) => id === condition);
    if (given && same(given.unit.dimension, unit.dimension))
      add(tag, { id: given.id, bounds: bounds(given.id), count: 1 });
  }
  for (const [tag, quantity] of byTag) {
    const text = Object.hasOwn(board.safety, tag) ? board.safety[tag] : undefined;
    const stated = text === undefined ? undefined : readNumber(text, quantity.unit);
    if (stated) add(tag, { id: `safety.${tag}`, bounds: stated, count: 1 });
  }
  return sources;
}
