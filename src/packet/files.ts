import type { Findings } from '../analysis/findings.ts';
import { resultsSchema } from '../analysis/results-schema.ts';
import type { Board } from '../spec/board.ts';
import { type Constant, constantsOf } from './constants.ts';
import { constantsHeader } from './constants-header.ts';
import type { Packet } from './packet.ts';
import { csvFiles } from './tables/index.ts';

/**
 * The files that stand beside the pages, by name: results.json with its schema, every table as CSV, constants for firmware.
 * @param packet  for the tables that are made for print alone, such as what changed
 */
export function packetFiles(board: Board, findings: Findings, packet?: Packet): Record<string, string> {
  return {
    'results.json': `${JSON.stringify(findings, null, 1)}\n`,
    'results.schema.json': `${JSON.stringify(resultsSchema(), null, 1)}\n`,
    ...csvFiles(board, findings, packet),
    ...firmwareFiles(findings, constantsOf(board, findings)),
  };
}

function firmwareFiles(findings: Findings, constants: readonly Constant[]): Record<string, string> {
  if (!constants.length) return {};
  const { document, revision_mark: revision, inputs_sha256 } = findings;
  const table = Object.fromEntries(constants.map(({ name, ...constant }) => [name, constant]));
  return {
    'constants.h': constantsHeader(findings, constants),
    'constants.json': `${JSON.stringify({ format: 'copperplate-constants/1', document, revision, inputs_sha256, constants: table }, null, 1)}\n`,
  };
}
