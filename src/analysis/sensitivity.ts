import type { Coefficient } from './correlation.ts';
import type { Draw, Variable } from './variable.ts';
import type { BoardFunction } from './worst-case/function.ts';

/** How one input acts on a result, all its variables (value, drift, ageing) together. SI base units. */
export interface Influence {
  readonly input: string;
  readonly instance: number;
  /** Share of the variance over boards, first order. Below zero where it goes with another input that outweighs it. */
  readonly variance: number;
  readonly worst: number;
  /** Change of the result when the input goes from its least to its greatest value, others at the point given. */
  readonly swing: number;
}

/**
 * Shares of each input in a result's variance and worst case, largest first.
 * @param at  all variables: where the conditions are held; parts are taken at typical
 */
export function influences(
  f: BoardFunction,
  variables: readonly Variable[],
  at: Float64Array,
  coefficient: Coefficient = independent,
): Influence[] {
  const point = Float64Array.from(f.variables, (v) => (variables[v]!.role === 'part' ? variables[v]!.typ : at[v]!));
  const slopes = f.slopes(point);
  const reaches = f.variables.map((v, i) =>
    variables[v]!.role === 'part' ? slopes[i]! * deviation(variables[v]!) : 0,
  );
  const groups = new Map<string, { input: string; instance: number; variance: number; reach: number; swing: number }>();
  f.variables.forEach((v, i) => {
    const variable = variables[v]!;
    const key = `${variable.input.id} ${variable.instance}`;
    const sofar = groups.get(key) ?? {
      input: variable.input.id,
      instance: variable.instance,
      variance: 0,
      reach: 0,
      swing: 0,
    };
    const swing = f.value(point.with(i, variable.max)) - f.value(point.with(i, variable.min));
    groups.set(key, {
      ...sofar,
      variance: sofar.variance + reaches[i]! * together(i, reaches, f.variables, coefficient),
      reach: sofar.reach + Math.abs(swing),
      swing: sofar.swing + swing,
    });
  });
  const all = [...groups.values()];
  const variance = all.reduce((sum, one) => sum + one.variance, 0);
  const reach = all.reduce((sum, one) => sum + one.reach, 0);
  return all
    .map((one) => ({
      input: one.input,
      instance: one.instance,
      swing: one.swing,
      variance: share(one.variance, variance),
      worst: share(one.reach, reach),
    }))
    .sort((a, b) => b.variance - a.variance || b.worst - a.worst);
}

const independent: Coefficient = (a, b) => (a === b ? 1 : 0);

/** What a variable and those that go with it reach together: Σ r·reach. */
function together(
  i: number,
  reaches: readonly number[],
  variables: readonly number[],
  coefficient: Coefficient,
): number {
  let sum = 0;
  for (const [j, reach] of reaches.entries()) if (reach !== 0) sum += coefficient(variables[i]!, variables[j]!) * reach;
  return sum;
}

const share = (part: number, whole: number): number => (whole > 0 && Number.isFinite(part / whole) ? part / whole : 0);

/** Standard deviation of a variable as it is drawn. */
export function deviation({ draw, min, typ, max }: Variable): number {
  return deviationOf(draw, min, typ, max);
}

function deviationOf(draw: Draw, min: number, typ: number, max: number): number {
  switch (draw.kind) {
    case 'held':
      return 0;
    case 'uniform':
      return (max - min) / Math.sqrt(12);
    case 'triangular':
      return Math.sqrt((min ** 2 + typ ** 2 + max ** 2 - min * typ - min * max - typ * max) / 18);
    case 'measured':
      return draw.sd;
    case 'normal': {
      // Half-normals of different width with equal chance: mean square of each side, less the square of the mean.
      const [left, right] = [(typ - min) / 3, (max - typ) / 3];
      const mean = ((right - left) / 2) * truncatedMean;
      return Math.sqrt(((left ** 2 + right ** 2) / 2) * truncatedSquare - mean ** 2);
    }
    default:
      return draw satisfies never;
  }
}

const density = Math.exp(-4.5) / Math.sqrt(2 * Math.PI);
const mass = 0.9973002039367398;
/** Mean square of a standard normal cut off at ±3 deviations: 1 − 6·φ(3)/(Φ(3) − Φ(−3)). */
const truncatedSquare = 1 - (6 * density) / mass;
/** Mean of its size: 2·(φ(0) − φ(3))/(Φ(3) − Φ(−3)). */
const truncatedMean = (2 * (1 / Math.sqrt(2 * Math.PI) - density)) / mass;

/**
 * Root-sum-square limits: every part's reach at the first-order slope, added as squares; where a band is not centred on
 * typical, its middle is added straight, as one-way terms must be. Values that go together are added with their
 * correlation (JCGM 100:2008, 5.2.2).
 */
export function rootSumSquare(
  f: BoardFunction,
  variables: readonly Variable[],
  at: Float64Array,
  coefficient: Coefficient = independent,
): { min: number; max: number } {
  const point = Float64Array.from(f.variables, (v) => (variables[v]!.role === 'part' ? variables[v]!.typ : at[v]!));
  const slopes = f.slopes(point);
  let centre = f.value(point);
  const reaches = f.variables.map((v, i) => {
    const { role, min, typ, max } = variables[v]!;
    if (role !== 'part') return 0;
    centre += slopes[i]! * ((min + max) / 2 - typ);
    return slopes[i]! * ((max - min) / 2);
  });
  const squares = Math.max(
    0,
    reaches.reduce((sum, reach, i) => sum + reach * together(i, reaches, f.variables, coefficient), 0),
  );
  return { min: centre - Math.sqrt(squares), max: centre + Math.sqrt(squares) };
}
