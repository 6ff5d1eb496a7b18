import { replay } from '../../expression/specialise.ts';
import type { Tape } from '../../expression/tape.ts';
import { TapeBuilder } from '../../expression/tape-builder.ts';
import type { Correlated } from '../correlation.ts';
import type { Variable } from '../variable.ts';

/** One number to follow on simulated boards: a slot of the model, with the conditions held at a point. */
export interface Target {
  readonly slot: number;
  /** All variables; only those of conditions are used. */
  readonly at: Float64Array;
}

/**
 * The targets as functions of the parts alone. Inputs of the tape are parts; `outputs` are slots, one for each target.
 */
export interface PartsTape {
  readonly tape: Tape;
  readonly outputs: readonly number[];
}

/**
 * Puts every target on one tape whose conditions are constants, so that what several targets share is computed once on
 * each board, and what no part moves is computed once for all.
 */
export function atCorners(
  model: Tape,
  variables: readonly Variable[],
  targets: readonly Target[],
  correlated: readonly Correlated[] = [],
): PartsTape {
  const builder = new TapeBuilder();
  const parts = variables.map(({ role, draw, id }) =>
    role === 'part' && draw.kind !== 'held' ? builder.input(id) : undefined,
  );
  for (const group of correlated) combine(builder, variables, group, parts);
  const groups = Map.groupBy(targets, ({ at }) =>
    variables.map(({ role }, i) => (role === 'condition' ? at[i] : '')).join(),
  );
  const slots = new Map<Target, number>();
  for (const group of groups.values()) {
    const inputs = variables.map(
      ({ typ, role }, i) => parts[i] ?? builder.constant(role === 'condition' ? group[0]!.at[i]! : typ),
    );
    const placed = replay(
      model,
      builder,
      inputs,
      group.map(({ slot }) => slot),
    );
    group.forEach((target, i) => {
      slots.set(target, placed[i]!);
    });
  }
  const { tape, outputs } = builder.finish(targets.map((target) => slots.get(target)!));
  return { tape, outputs };
}

/** Makes values that go together of independent standard normal numbers: typical + sd·Σ factor·z. */
function combine(
  builder: TapeBuilder,
  variables: readonly Variable[],
  { variables: together, factor }: Correlated,
  parts: (number | undefined)[],
): void {
  const independent = together.map((v) => parts[v]!);
  together.forEach((v, i) => {
    const { typ, draw } = variables[v]!;
    const sd = draw.kind === 'measured' ? draw.sd : 0;
    const terms = independent.flatMap((z, j) => {
      const share = factor[i]![j]!;
      return share === 0 ? [] : [builder.call('multiply', [builder.constant(sd * share), z])];
    });
    parts[v] = builder.call('sum', [builder.constant(typ), ...terms]);
  });
}
