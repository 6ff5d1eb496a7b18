import { evaluate } from '../../expression/readings/value.ts';
import type { SweepFinding, SweepPoint } from '../findings.ts';
import type { Model, ModelCheck } from '../model.ts';
import { differenceInUnit, differenceUnit, inUnit, printedUnit } from '../units.ts';
import type { Box } from '../worst-case/box.ts';
import { type Extreme, Search } from '../worst-case/extremes.ts';
import { BoardFunction } from '../worst-case/function.ts';
import { monotoneEnds } from '../worst-case/monotone.ts';
import type { Axis } from './axis.ts';
import { type Drawn, refined } from './refine.ts';
import { stretchesOf } from './stretches.ts';

/** A picture shows a thousandth of the band's width; what is wider by less is not seen. */
const search = { tolerance: 1e-3, budget: 120 };
const shape = { blur: 0.004, most: 25 };
/** Beyond this ratio of its ends, an axis above nought goes by decades. */
const decades = 30;

/** What stands at one place of the axis. SI base units. */
interface Place extends Drawn {
  readonly typical: number;
  readonly min: End;
  readonly max: End;
  readonly slack?: number;
  readonly limit?: number;
}

/** One result, and the check that limits it, as functions of the axis. */
export class Curves {
  readonly #axis: Axis;
  readonly #of: string;
  readonly #f: BoardFunction;
  readonly #check: ModelCheck | undefined;
  readonly #slack: BoardFunction | undefined;
  readonly #limit: BoardFunction | undefined;

  constructor(axis: Axis, of: string, check: string | undefined) {
    const { model } = axis.setting;
    this.#axis = axis;
    this.#of = of;
    this.#f = new BoardFunction(model.tape, model.slots.get(of)!);
    this.#check = model.checks.find((one) => one.check.id === check);
    if (this.#check) {
      this.#slack = new BoardFunction(model.tape, this.#check.slack);
      if (comparesBare(this.#check, of)) this.#limit = new BoardFunction(model.tape, this.#check.limit);
    }
  }

  /** Whether the result depends on the axis at all. */
  moves(): boolean {
    return this.#f.variables.includes(this.#axis.variable);
  }

  finding(whole: Model, circuit: string, corners: readonly Float64Array[]): SweepFinding {
    const axis = this.#axis;
    const result = axis.setting.model.results.find(({ id }) => id === this.#of)!;
    const runs = this.#runs(placesOf(whole, axis, corners));
    const places = runs.flat();
    const ends = places.flatMap(({ min, max }) => [min, max]);
    const to = (si: number) => inUnit(si, result.unit);
    const point = ({ x, typical, min, max, limit, slack }: Place): SweepPoint => ({
      x: inUnit(x, axis.input.unit),
      typical: to(typical),
      min: to(min.value),
      max: to(max.value),
      ...(limit === undefined ? {} : { limit: to(limit) }),
      ...(slack === undefined ? {} : { slack: differenceInUnit(slack, this.#check!.check.unit) }),
    });
    return {
      circuit,
      of: this.#of,
      unit: printedUnit(result.unit),
      over: axis.input.id,
      over_unit: printedUnit(axis.input.unit),
      stands_for: axis.root,
      axis: axis.span,
      over_typical: inUnit(axis.typ, axis.input.unit),
      ...(this.#check
        ? { check: this.#check.check.id, slack_unit: printedUnit(differenceUnit(this.#check.check.unit)) }
        : {}),
      runs: runs.map((run) => run.map(point)),
      proven: ends.every(({ proven }) => proven),
      gap: differenceInUnit(
        Math.max(0, ...ends.map(({ value, bound, proven }) => (proven ? 0 : Math.abs(bound - value)))),
        result.unit,
      ),
      certain: ends.every(({ certain }) => certain),
      apart: apart(whole, axis, this.#f),
    };
  }

  #runs(special: readonly number[]): Place[][] {
    const { setting, variable, span, from, to } = this.#axis;
    const stretches = stretchesOf(setting.boxes, variable, { from, to }, span === 'condition');
    const middle =
      from > 0 && to / from >= decades
        ? (a: number, b: number) => Math.sqrt(a * b)
        : (a: number, b: number) => a + (b - a) / 2;
    return stretches
      .map((stretch) => {
        const half = middle(stretch.from, stretch.to);
        const quarters = [middle(stretch.from, half), middle(half, stretch.to)];
        const inside = special.filter((x) => x > stretch.from && x < stretch.to);
        const start = [...new Set([stretch.from, half, stretch.to, ...quarters, ...inside])].sort((a, b) => a - b);
        return refined(start, (x) => this.#place(x, stretch.boxes), middle, shape);
      })
      .filter((run) => run.length > 0);
  }

  #place(x: number, boxes: readonly Box[]): Place | undefined {
    const { variable, setting } = this.#axis;
    const { typical: point } = setting;
    const pinned = boxes.map((box) => ({ ...box, lo: box.lo.with(variable, x), hi: box.hi.with(variable, x) }));
    const at = point.with(variable, x);
    const typical = this.#f.value(Float64Array.from(this.#f.variables, (v) => at[v]!));
    const [min, max] = endsOf(this.#f, pinned, at);
    if (![typical, min.value, max.value].every(Number.isFinite)) return undefined;
    const limit = this.#limit && this.#tightest(this.#limit, pinned, at);
    const slack = this.#slack && this.#least(this.#slack, pinned, at, { min, max, limit });
    return {
      x,
      lines: [typical, min.value, max.value, ...(limit === undefined ? [] : [limit])],
      typical,
      min,
      max,
      ...(limit === undefined || !Number.isFinite(limit) ? {} : { limit }),
      ...(slack === undefined || !Number.isFinite(slack) ? {} : { slack }),
    };
  }

  /** The limit where it leaves least. */
  #tightest(limit: BoardFunction, boxes: readonly Box[], at: Float64Array): number {
    if (limit.variables.length === 0) return limit.value(new Float64Array());
    const [min, max] = endsOf(limit, boxes, at);
    return this.#check!.check.sense === 'atMost' ? min.value : max.value;
  }

  #least(
    slack: BoardFunction,
    boxes: readonly Box[],
    at: Float64Array,
    { min, max, limit }: { min: End; max: End; limit: number | undefined },
  ): number {
    // Against a limit that nothing moves, the band says it already.
    if (limit !== undefined && this.#limit!.variables.length === 0)
      return this.#check!.check.sense === 'atMost' ? limit - max.value : min.value - limit;
    return (monotoneEnds(slack, boxes)?.min ?? new Search(slack, boxes, at, search).min()).value;
  }
}

type End = Pick<Extreme, 'value' | 'bound' | 'proven' | 'certain'>;

/** Least and greatest over some boxes: two corners where the function is monotone, else what a search finds. */
function endsOf(f: BoardFunction, boxes: readonly Box[], typical: Float64Array): [min: End, max: End] {
  const ends = monotoneEnds(f, boxes);
  if (!ends) {
    const extremes = new Search(f, boxes, typical, search);
    return [extremes.min(), extremes.max()];
  }
  const closed = (value: number): End => ({ value, bound: value, proven: true, certain: true });
  return [closed(ends.min.value), closed(ends.max.value)];
}

const comparesBare = ({ check }: ModelCheck, of: string): boolean =>
  check.left.kind === 'symbol' && check.left.name === of;

/** Where on the axis something lies that a reader looks for: typical, and each worst corner. SI base units. */
function placesOf(model: Model, axis: Axis, corners: readonly Float64Array[]): number[] {
  const slot = model.slots.get(axis.input.id);
  const found = slot === undefined ? [] : corners.map((at) => evaluate(model.tape, at)[slot]!);
  return [...new Set([axis.typ, ...found])].filter((x) => x >= axis.from && x <= axis.to);
}

/** What acts on both the axis and the result, where the axis is moved by itself. */
function apart(whole: Model, { span, root, setting, variable }: Axis, f: BoardFunction): string[] {
  const slot = whole.slots.get(root);
  if (span !== 'result' || slot === undefined) return [];
  const behind = new Set(
    new BoardFunction(whole.tape, slot).variables
      .map((v) => whole.variables[v]!)
      .filter(({ role }) => role !== 'exact')
      .map(({ id }) => id),
  );
  return f.variables
    .filter((v) => v !== variable)
    .map((v) => setting.model.variables[v]!.id)
    .filter((id) => behind.has(id));
}
