import type { Findings } from '../analysis/findings.ts';
import type { Board } from '../spec/board.ts';
import { type Constant, constantsOf } from './constants.ts';
import { constantsHeader } from './constants-header.ts';
import { type CsvCell, toCsv } from './csv.ts';

/** The files that stand beside the pages, by name: results.json, and the tables as CSV. */
export function packetFiles(board: Board, findings: Findings): Record<string, string> {
  return {
    'results.json': `${JSON.stringify(findings, null, 1)}\n`,
    'margins.csv': toCsv(marginRows(findings)),
    'parts.csv': toCsv(partRows(board)),
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

function marginRows(findings: Findings): CsvCell[][] {
  const checks = findings.ranking.map((id) => findings.checks.find((check) => check.id === id)!);
  return [
    [
      'check',
      'statement',
      'because',
      'worst slack',
      'bound',
      'unit',
      'limit',
      'limit unit',
      'margin',
      'target',
      'fails at least',
      'fails at most',
      'verdict',
      'deviation',
      'requirement',
    ],
    ...checks.map((c) => [
      c.id,
      c.statement,
      c.because,
      c.worst_slack,
      c.worst_slack_bound,
      c.unit,
      c.limit,
      c.limit_unit,
      c.margin,
      c.target,
      c.fail_fraction?.low ?? null,
      c.fail_fraction?.high ?? null,
      c.verdict,
      c.deviation ?? null,
      c.requirement ?? null,
    ]),
  ];
}

function partRows({ circuits }: Board): CsvCell[][] {
  const parts = circuits.flatMap((circuit) =>
    circuit.inputs.filter(({ refs }) => refs !== undefined).map((input) => ({ circuit, input })),
  );
  return [
    ['designator', 'circuit', 'count', 'symbol', 'what it is', 'value', 'basis', 'origin', 'why'],
    ...parts.map(({ circuit, input }) => [
      input.refs!,
      circuit.id,
      circuit.count,
      input.symbol,
      input.says ?? null,
      input.value.kind === 'expression' ? input.value.text : input.value.quantity.text,
      input.basis ?? null,
      input.from ?? null,
      circuit.why ?? null,
    ]),
  ];
}
