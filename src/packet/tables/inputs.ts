import type { Findings } from '../../analysis/findings.ts';
import type { Board, Input } from '../../spec/board.ts';
import type { CsvCell } from '../csv.ts';
import { trailOf } from '../trail.ts';

/** Everything that goes in: conditions, derating factors, what circuits are given; with where it is used. */
export function inputRows(board: Board, findings: Findings): CsvCell[][] {
  const trail = trailOf(board);
  const usedIn = (id: string): string =>
    [...(trail.uses.get(id) ?? []), ...(trail.limits.get(id) ?? []).map((check) => check.id)].join('; ');
  const row = (input: Input, circuit: string | null): CsvCell[] => {
    const found = findings.inputs[input.id];
    const { value } = input;
    return [
      input.id,
      circuit,
      input.refs ?? null,
      input.says ?? null,
      found?.kind ?? value.kind,
      value.kind === 'expression' ? value.text : value.quantity.text,
      found?.min ?? null,
      found?.typ ?? null,
      found?.max ?? null,
      found?.unit ?? (input.unit.text || '1'),
      input.basis ?? null,
      input.usual ? 'yes' : 'no',
      input.from ?? null,
      usedIn(input.id),
    ];
  };
  return [
    [
      'input',
      'circuit',
      'designator',
      'what it is',
      'kind',
      'as written',
      'min',
      'typical',
      'max',
      'unit',
      'basis',
      'usual value',
      'origin',
      'used in',
    ],
    ...[...board.conditions, ...board.derating].map((input) => row(input, null)),
    ...board.circuits.flatMap((circuit) => circuit.inputs.map((input) => row(input, circuit.id))),
  ];
}
