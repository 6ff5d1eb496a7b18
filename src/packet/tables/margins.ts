import type { CheckFinding, Findings } from '../../analysis/findings.ts';
import type { CsvCell } from '../csv.ts';
import { cornerCell } from './at.ts';

/** Every check as ranked, thinnest margin first. */
export function marginRows({ ranking, checks }: Findings): CsvCell[][] {
  return rowsOf(ranking.map((id) => checks.find((check) => check.id === id)!));
}

/** When the equations hold. */
export const validityRows = ({ validity }: Findings): CsvCell[][] => rowsOf(validity);

function rowsOf(checks: readonly CheckFinding[]): CsvCell[][] {
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
      'at',
      'case',
      'proven',
      'typical slack',
      'not assessed because',
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
      cornerCell(c.at_worst),
      c.case ?? null,
      c.proven ? 'yes' : 'no',
      c.nominal_slack,
      c.reason ?? null,
    ]),
  ];
}
