import { evaluateTree } from '../../expression/readings/value.ts';
import type { Tree } from '../../expression/tree.ts';
import type { Check } from '../../spec/board.ts';
import type { Row, Table } from '../block.ts';
import { decimal, sans, serif, unit, wide } from '../chapters/columns.ts';
import { aligned, unitFor } from '../figures.ts';
import { dash, em, name } from '../inline.ts';
import { mustHold } from '../statements.ts';
import { checkAnchor } from '../trail.ts';
import { local, type Worked } from './worked.ts';

const columns = [
  wide(sans('Check'), 0.14),
  wide(serif('Must hold'), 0.26),
  wide(serif('because'), 0.28),
  wide(decimal('Example'), 0.08),
  wide(decimal('Limit'), 0.08),
  wide(unit('unit'), 0.06),
  wide(sans('There it'), 0.1),
];

/** What must hold, why, and whether it does in the worked example. */
export const checksTable = (worked: Worked, number: string): Table | undefined =>
  table(worked, worked.circuit.checks, 'table-checks', number, 'What a board is held against, in its worst case.');

/** When the equations hold: a board outside carries a mark, and its numbers are not to be trusted. */
export const validityTable = (worked: Worked, number: string): Table | undefined =>
  table(
    worked,
    worked.circuit.validity,
    'table-validity',
    number,
    'When the equations hold. These lines judge the calculation and not the board.',
  );

function table(
  worked: Worked,
  checks: readonly Check[],
  id: string,
  number: string,
  caption: string,
): Table | undefined {
  if (!checks.length) return undefined;
  const rows = checks.map((check) => row(worked, check));
  return { kind: 'table', id, number, caption: [caption], columns, groups: [{ rows }], wide: true };
}

function row({ values }: Worked, check: Check): Row {
  const valueAt = (tree: Tree): number => evaluateTree(tree, (id) => values.get(id)!);
  const [left, right] = [valueAt(check.left), valueAt(check.right)];
  const shared = unitFor([left, right], check.unit);
  const [reached, limit] = aligned([left, right], shared) as [string, string];
  const holds = check.sense === 'atMost' ? left <= right : left >= right;
  const source = check.source ? [` (${check.source})`] : [];
  return {
    id: local(checkAnchor(check.id)),
    cells: [
      [name(check.name)],
      mustHold(check),
      [em(check.because.replace(/[.\s]+$/, '')), ...source],
      { number: reached },
      { number: limit },
      shared.text ? [shared.text] : dash,
      [holds ? 'holds' : 'does not hold'],
    ],
  };
}
