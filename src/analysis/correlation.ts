import type { Board } from '../spec/board.ts';
import type { Correlations } from '../spec/correlations.ts';
import type { Variable } from './variable.ts';

/** Measured values that go together, by index of their variables; those of one of several alike circuits. */
export interface Correlated extends Pick<Correlations, 'coefficients' | 'factor'> {
  readonly variables: readonly number[];
}

export function correlatedOf(board: Board, variables: readonly Variable[]): Correlated[] {
  const places = new Map(variables.map(({ id }, v) => [id, v]));
  return board.circuits.flatMap(({ correlations, count }) =>
    correlations
      ? Array.from({ length: count }, (_, k) => ({
          coefficients: correlations.coefficients,
          factor: correlations.factor,
          variables: correlations.of.map((id) => places.get(k === 0 ? id : `${id} #${k + 1}`)!),
        }))
      : [],
  );
}

/** The correlation coefficient of any two variables: 0 where none is stated. */
export type Coefficient = (a: number, b: number) => number;

export function coefficientsOf(groups: readonly Correlated[]): Coefficient {
  if (!groups.length) return (a, b) => (a === b ? 1 : 0);
  const known = new Map<string, number>();
  for (const { variables, coefficients } of groups)
    variables.forEach((a, i) => {
      variables.forEach((b, j) => {
        known.set(`${a} ${b}`, coefficients[i]![j]!);
      });
    });
  return (a, b) => (a === b ? 1 : (known.get(`${a} ${b}`) ?? 0));
}

/**
 * The variables as they are drawn: those that go together are made of as many independent standard normal numbers.
 */
export function drawnVariables(variables: readonly Variable[], groups: readonly Correlated[]): Variable[] {
  const together = new Set(groups.flatMap((group) => group.variables));
  return variables.map((variable, v) =>
    together.has(v) ? { ...variable, typ: 0, draw: { kind: 'measured', sd: 1 } } : variable,
  );
}
