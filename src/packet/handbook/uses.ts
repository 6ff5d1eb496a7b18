import { typeset } from '../../expression/readings/typeset.ts';
import type { Result } from '../../spec/board.ts';
import type { Row, Table } from '../block.ts';
import { decimal, sans, serif, unit, wide } from '../chapters/columns.ts';
import { figureText, plain, plainTyped, typedUnitFor } from '../figures.ts';
import { dash, joined, link, math, name } from '../inline.ts';
import { idTex, symbolLeaves } from '../symbols.ts';
import type { Text } from '../text.ts';
import { local, type Worked } from './worked.ts';

/** Constants that firmware takes from a circuit of this method. */
export function firmwareTable({ circuit, values }: Worked, number: string): Table | undefined {
  if (!circuit.firmware.length) return undefined;
  const row = ({ id, symbol, tree, unit: typed, says }: Result): Row => {
    const si = values.get(id)!;
    const figure = plainTyped(si, typedUnitFor([si], typed), 6);
    return {
      id: symbol,
      cells: [
        [name(symbol)],
        [math(typeset(tree, symbolLeaves(tree, circuit.id)))],
        { number: figure.number },
        figure.unit ? [figure.unit] : dash,
        [says || '–'],
      ],
    };
  };
  return {
    kind: 'table',
    id: 'table-firmware',
    number,
    caption: ['Constants for firmware, each with its range over all boards in the packet.'],
    columns: [
      wide(sans('Constant'), 0.24),
      wide(serif('Is'), 0.34),
      wide(decimal('Example'), 0.12),
      wide(unit('unit'), 0.1),
      wide(serif('What it is'), 0.2),
    ],
    groups: [{ rows: circuit.firmware.map(row) }],
    wide: true,
  };
}

/** What a tester reads, and where. */
export function testPointsTable({ circuit, values, inputs }: Worked, number: string): Table | undefined {
  if (!circuit.testPoints.length) return undefined;
  const rows = circuit.testPoints.map(({ name: point, reads, says, when }): Row => {
    const result = circuit.results.find(({ id }) => id === reads) ?? inputs.get(reads)!;
    const { number: reading, unit: printed } = plain(values.get(reads)!, result.unit);
    const stimulus = [...when].map(
      ([id, { typ, unit: typed }]): Text => [math(idTex(id)), ` = ${figureText(plain(typ, typed))}`],
    );
    return {
      cells: [
        [name(point)],
        [link(local(reads), local(reads)), ...(says ? [`, ${says}`] : [])],
        stimulus.length ? joined(stimulus, ', ') : ['as given'],
        { number: reading },
        printed ? [printed] : dash,
      ],
    };
  });
  return {
    kind: 'table',
    id: 'table-test-points',
    number,
    caption: ['Test points. The packet gives the least and greatest reading of a good board.'],
    columns: [
      wide(sans('Test point'), 0.2),
      wide(serif('Reads'), 0.36),
      wide(serif('With'), 0.24),
      wide(decimal('Example'), 0.1),
      wide(unit('unit'), 0.1),
    ],
    groups: [{ rows }],
    wide: true,
  };
}
