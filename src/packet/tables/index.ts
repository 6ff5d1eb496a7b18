import type { Findings } from '../../analysis/findings.ts';
import type { Board } from '../../spec/board.ts';
import { toCsv } from '../csv.ts';
import type { Packet } from '../packet.ts';
import { inputRows } from './inputs.ts';
import { marginRows, validityRows } from './margins.ts';
import { partRows } from './parts.ts';
import { printedTables } from './printed.ts';
import { resultRows, sensitivityRows } from './results.ts';
import { benchRows, requirementRows, testPointRows } from './review.ts';
import { cornerRows, sweepRows } from './sweeps.ts';

/** What was found, as tables at full precision, by file name. */
const found: Readonly<Record<string, (board: Board, findings: Findings) => ReturnType<typeof marginRows>>> = {
  'margins.csv': (_, findings) => marginRows(findings),
  'validity.csv': (_, findings) => validityRows(findings),
  'inputs.csv': inputRows,
  'results.csv': resultRows,
  'sensitivity.csv': (_, findings) => sensitivityRows(findings),
  'parts.csv': partRows,
  'sweeps.csv': (_, findings) => sweepRows(findings),
  'requirements.csv': requirementRows,
  'test-points.csv': (_, findings) => testPointRows(findings),
  'bench-results.csv': (_, findings) => benchRows(findings),
  'corners.csv': (_, findings) => cornerRows(findings),
};

export const tableFiles = Object.keys(found);

/** Every table of the packet as CSV, by file name: what was found at full precision, everything else as printed. */
export function csvFiles(board: Board, findings: Findings, packet?: Packet): Record<string, string> {
  const printed = packet ? [...printedTables(packet)] : [];
  return {
    ...Object.fromEntries(Object.entries(found).map(([name, rows]) => [name, toCsv(rows(board, findings))])),
    ...Object.fromEntries(printed.map(([id, rows]) => [`${id}.csv`, toCsv(rows)])),
  };
}
