import type { Findings } from '../../analysis/findings.ts';
import type { CsvCell } from '../csv.ts';

/** Every point of every plot over a condition. */
export function sweepRows({ sweeps }: Findings): CsvCell[][] {
  return [
    [
      'result',
      'unit',
      'over',
      'unit of x',
      'stands for',
      'run',
      'x',
      'typical',
      'worst min',
      'worst max',
      'limit',
      'check',
      'least slack',
      'unit of slack',
      'proven',
    ],
    ...sweeps.flatMap((sweep) =>
      sweep.runs.flatMap((run, i) =>
        run.map((point) => [
          sweep.of,
          sweep.unit,
          sweep.over,
          sweep.over_unit,
          sweep.stands_for,
          i + 1,
          point.x,
          point.typical,
          point.min,
          point.max,
          point.limit ?? null,
          sweep.check ?? null,
          point.slack ?? null,
          sweep.slack_unit ?? null,
          sweep.proven ? 'yes' : 'no',
        ]),
      ),
    ),
  ];
}

/** The thinnest margin in each corner of two conditions. */
export function cornerRows({ corners }: Findings): CsvCell[][] {
  const head = ['condition', 'level', 'value', 'unit', 'condition', 'level', 'value', 'unit'];
  const found = ['thinnest check', 'margin', 'worst slack', 'unit', 'verdict'];
  if (!corners) return [[...head, ...found]];
  const { rows, columns, cells } = corners;
  return [
    [...head, ...found],
    ...rows.levels.flatMap((row, i) =>
      cells[i]!.map((cell, j): CsvCell[] => {
        const column = columns?.levels[j];
        return [
          rows.condition,
          row.name,
          row.value,
          rows.unit,
          columns?.condition ?? null,
          column?.name ?? null,
          column?.value ?? null,
          columns?.unit ?? null,
          ...(cell
            ? [cell.check, cell.margin, cell.worst_slack, cell.unit, cell.verdict]
            : [null, null, null, null, null]),
        ];
      }),
    ),
  ];
}
