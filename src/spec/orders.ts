import type { Order } from './board.ts';
import type { CheckSpec, OrderSpec } from './circuit-schema.ts';
import type { Path } from './yaml-file.ts';

type Placed<T> = Readonly<Record<string, { readonly spec: T; readonly at: Path }>>;

/**
 * Thresholds in rising order as checks of each with the next: `bus: { rising: [V_uv, V_work, V_ov] }` gives `bus_1`,
 * `V_uv <= V_work`, and `bus_2`, `V_work <= V_ov`. A range in the middle is held clear of both neighbours.
 */
export function orderedChecks(
  circuit: string,
  orders: Placed<OrderSpec>,
): { checks: Placed<CheckSpec>; orders: Order[] } {
  const entries = Object.entries(orders).map(([name, { spec, at }]) => ({
    name,
    because: spec.because,
    checks: spec.rising.slice(1).map((above, i) => ({
      name: `${name}_${i + 1}`,
      at,
      spec: {
        holds: `${spec.rising[i]!} <= ${above}`,
        because: spec.because,
        ...(spec.source ? { source: spec.source } : {}),
      },
    })),
  }));
  return {
    checks: Object.fromEntries(
      entries.flatMap(({ checks }) => checks.map(({ name, spec, at }) => [name, { spec, at }] as const)),
    ),
    orders: entries.map(({ name, because, checks }) => ({
      name,
      because,
      checks: checks.map((check) => `${circuit}.${check.name}`),
    })),
  };
}
