import type { Table } from '../block.ts';
import { sans, serif, wide } from '../chapters/columns.ts';
import { joined, link } from '../inline.ts';
import type { Text } from '../text.ts';
import { checkAnchor } from '../trail.ts';
import { local, type Worked } from './worked.ts';

/** Who says so: each source with the equations and checks that rest on it. */
export function sourcesTable({ circuit, method, trail }: Worked, number: string): Table {
  const rows = Object.entries(method.sources).map(([key, says]) => {
    const equations = circuit.results
      .filter(({ source }) => source === key)
      .map(({ id, symbol }): Text => [link(`(${trail.equations.get(id)})`, symbol)]);
    const checks = [...circuit.checks, ...circuit.validity]
      .filter(({ source }) => source === key)
      .map(({ id, name }): Text => [link(name, local(checkAnchor(id)))]);
    return { cells: [[says], joined([...equations, ...checks], ', ')] };
  });
  return {
    kind: 'table',
    id: 'table-sources',
    number,
    caption: ['What the equations rest on.'],
    columns: [wide(serif('Source'), 0.7), wide(sans('Used in'), 0.3)],
    groups: [{ rows }],
    wide: true,
  };
}
