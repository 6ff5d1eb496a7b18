import type { Corner } from './findings.ts';
import { toPrinted } from './units.ts';
import type { Variable } from './variable.ts';

/** The variables that matter at a point and may stand elsewhere, each in its own unit. */
export function cornerOf(variables: readonly Variable[], which: readonly number[], at: Float64Array): Corner {
  return Object.fromEntries(
    which
      .filter((v) => variables[v]!.role !== 'exact')
      .map((v) => [variables[v]!.id, toPrinted(variables[v]!, at[v]!)]),
  );
}

/** Only the conditions among them. */
export function conditionsOf(variables: readonly Variable[], which: readonly number[], at: Float64Array): Corner {
  return cornerOf(
    variables,
    which.filter((v) => variables[v]!.role === 'condition'),
    at,
  );
}
