import { range } from '../expression/ranges.ts';
import { enclose } from '../expression/readings/enclose.ts';
import { evaluate } from '../expression/readings/value.ts';
import type { Divisor } from '../expression/tape-builder.ts';
import type { Board } from '../spec/board.ts';
import type { Model } from './model.ts';
import { toPrinted } from './units.ts';
import { modelFor } from './values-at.ts';
import { type Box, boxesOf } from './worst-case/box.ts';
import { type Proof, prove } from './worst-case/branch-and-bound.ts';
import type { Point } from './worst-case/corner.ts';
import { Search } from './worst-case/extremes.ts';
import { BoardFunction } from './worst-case/function.ts';

/** A result that has no value on some board or in some condition that must be endured. */
export interface UndefinedResult {
  readonly id: string;
  readonly code: string;
  readonly found: string;
  readonly expected: string;
  readonly hint: string;
}

/**
 * Divisors that can be zero, with the inputs that let them, and results that have no value even at typical.
 * Such a board is not judged: no number of it would mean anything.
 */
export function undefinedResults(board: Board): UndefinedResult[] {
  const model = modelFor(board);
  const boxes = boxesOf(board, model.variables);
  const typical = Float64Array.from(model.variables, ({ typ }) => typ);
  const suspects = boxes.flatMap((box) => {
    const ranges = enclose(
      model.tape,
      Array.from(box.lo, (lo, i) => range(lo, box.hi[i]!)),
    );
    return model.divisors.filter(({ slot }) => ranges[slot]!.lo <= 0 && ranges[slot]!.hi >= 0);
  });
  const found = new Map<string, UndefinedResult>();
  for (const { slot, guarded, owner = '' } of suspects) {
    if (found.has(owner)) continue;
    if (guarded && !canBeZero(model, guarded, boxes)) continue;
    const search = new Search(new BoardFunction(model.tape, slot), boxes, typical);
    const [min, max] = [search.min(), search.max()];
    if (min.value > 0 || max.value < 0) continue;
    const blame = search.f.variables
      .map((v) => model.variables[v]!)
      .filter(({ min, max }) => min < max || (min === 0 && max === 0));
    const spans = blame.map((variable) =>
      `\`${variable.id}\` (${toPrinted(variable, variable.min)} to ${toPrinted(variable, variable.max)} ${variable.what === 'value' ? variable.input.unit.text : ''})`.replace(
        ' )',
        ')',
      ),
    );
    found.set(owner, {
      id: owner,
      code: 'zero-divisor',
      found: `a division by something that can be zero in \`${owner}\``,
      expected: 'a divisor that stays on one side of zero',
      hint: spans.length
        ? `What lets it: ${spans.join(', ')}. Narrow the range, or write the equation another way.`
        : 'Its divisor is zero at every corner.',
    });
  }
  const values = evaluate(model.tape, typical);
  for (const { id } of model.results) {
    const value = values[model.slots.get(id)!]!;
    if (Number.isFinite(value) || found.size) continue;
    found.set(id, {
      id,
      code: 'no-value',
      found: `no value for \`${id}\` with typical inputs`,
      expected: 'a number',
      hint: 'Look for a root or logarithm of a negative number, or a number beyond 1e308.',
    });
  }
  return [...found.values()];
}

type Guarded = NonNullable<Divisor['guarded']>;

/** Parts of the boxes that are looked at before a divisor in a branch is taken not to reach zero there. */
const budget = 2000;

/** Whether a divisor may be zero where its branch is taken: it comes to zero from both sides, and is not kept off it. */
function canBeZero(model: Model, { above, below, size }: Guarded, boxes: readonly Box[]): boolean {
  if (toZero(model, above, -1, boxes).best.value < 0 || toZero(model, below, 1, boxes).best.value < 0) return false;
  return toZero(model, size, -1, boxes).bound >= 0;
}

/** Looks for where a slot comes to zero or beyond: down to it with −1, up to it with 1. */
function toZero(model: Model, slot: number, sense: 1 | -1, boxes: readonly Box[]): Proof {
  const f = new BoardFunction(model.tape, slot);
  const parts = boxes.map((box) => f.argumentsOf(box));
  const start = parts.map(({ lo }): Point => ({ at: lo, value: sense * f.value(lo) }));
  return prove(f, parts, sense, start, { tolerance: 0, budget, enough: -Number.MIN_VALUE });
}
