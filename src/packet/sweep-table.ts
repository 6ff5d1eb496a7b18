import type { SweepFinding } from '../analysis/findings.ts';
import type { Unit } from '../quantity/unit.ts';
import type { FigureData } from './block.ts';
import { aligned } from './figures.ts';

/** The points of a curve as a table, in the units in which it is drawn; worst cases rounded outward. */
export function sweepTable(
  { runs, over }: SweepFinding,
  drawn: {
    readonly of: Unit;
    readonly over: Unit;
    readonly x: (v: number) => number;
    readonly y: (v: number) => number;
  },
): FigureData {
  const points = runs.flat();
  const si = (unit: Unit) => (value: number) => value * unit.scale + unit.offset;
  const column = (values: readonly number[], unit: Unit, round: 'nearest' | 'down' | 'up'): string[] =>
    aligned(
      values.map(si(unit)),
      unit,
      values.map(() => round),
    );
  const limited = points.every(({ limit }) => limit !== undefined);
  const columns = [
    column(
      points.map(({ x }) => drawn.x(x)),
      drawn.over,
      'nearest',
    ),
    column(
      points.map(({ typical }) => drawn.y(typical)),
      drawn.of,
      'nearest',
    ),
    column(
      points.map(({ min }) => drawn.y(min)),
      drawn.of,
      'down',
    ),
    column(
      points.map(({ max }) => drawn.y(max)),
      drawn.of,
      'up',
    ),
    ...(limited
      ? [
          column(
            points.map(({ limit }) => drawn.y(limit!)),
            drawn.of,
            'nearest',
          ),
        ]
      : []),
  ];
  const named = (what: string, unit: Unit) => (unit.text ? `${what}, ${unit.text}` : what);
  return {
    heads: [
      named(over, drawn.over),
      named('typical', drawn.of),
      named('worst min', drawn.of),
      named('worst max', drawn.of),
      ...(limited ? [named('limit', drawn.of)] : []),
    ],
    rows: points.map((_, i) => columns.map((one) => one[i]!)),
    file: 'sweeps.csv',
  };
}
