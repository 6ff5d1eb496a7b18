import type { Board } from '../board.ts';

/** The components that a note may use, what their `id` names, and the attributes beside it. */
export const components = {
  Value: { of: 'a result, input or condition', where: 'inline', attributes: ['id', 'at'] },
  Check: { of: 'a check', where: 'inline', attributes: ['id'] },
  Equation: { of: 'a result', where: 'block', attributes: ['id'] },
  Figure: { of: 'a check', where: 'block', attributes: ['id'] },
} as const;
export type ComponentName = keyof typeof components;

export const isBlockComponent = (name: ComponentName): boolean => components[name].where === 'block';

/** Ids that each component may name on this board. */
export function idsFor({ circuits, conditions, totals, requirements }: Board) {
  const results = [...circuits.flatMap((circuit) => circuit.results), ...totals].map(({ id }) => id);
  const inputs = [...conditions, ...circuits.flatMap((circuit) => circuit.inputs)].map(({ id }) => id);
  const checks = circuits.flatMap((circuit) => circuit.checks.map(({ id }) => id));
  return {
    Value: new Set([...results, ...inputs]),
    Check: new Set(checks),
    Equation: new Set(results),
    Figure: new Set(checks),
    /** What `[text](#id)` may lead to, and the anchor that it stands for. */
    links: new Map<string, string>([
      ...[...circuits.map(({ id }) => id), ...results, ...inputs].map((id) => [id, id] as const),
      ...checks.map((id) => [id, `check-${id}`] as const),
      ...requirements.map(({ id }) => [id, `requirement-${id}`] as const),
    ]),
  };
}
export type NoteIds = ReturnType<typeof idsFor>;
