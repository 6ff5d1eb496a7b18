import type { CheckFinding, Findings, Verdict } from '../analysis/findings.ts';
import { percentText, yieldText } from '../packet/numbers.ts';

/** Words as in the packet: capitals only where there is something to do. */
const words: Record<Verdict, string> = {
  pass: 'pass',
  marginal: 'marginal',
  fail: 'FAIL',
  accepted: 'accepted',
  'not assessed': 'not assessed',
};

/** The ranked margin table of one revision for a terminal `width` columns wide; plain text, thinnest margin first. */
export function marginsTable(findings: Findings, width: number): string {
  const checks = findings.ranking.map((id) => findings.checks.find((check) => check.id === id)!);
  const longest = Math.max(5, ...checks.map(({ id }) => id.length));
  const rows = checks.map((check) => row(check, longest, width));
  const head = `${findings.board}/${findings.revision}  ${words[findings.verdict]}  ${yieldText(findings)}`;
  return [head, ...rows].join('\n');
}

function row(check: CheckFinding, longest: number, width: number): string {
  const margin = check.margin === null ? slackText(check) : percentText(check.margin);
  const start = `  ${check.id.padEnd(longest)}  ${margin.padStart(9)}  ${bar(check.margin)}  ${words[check.verdict].padEnd(12)}`;
  const room = width - start.length - 2;
  return room < 12 ? start.trimEnd() : `${start}  ${clip(check.statement, room)}`.trimEnd();
}

const slackText = ({ worst_slack: slack, unit }: CheckFinding): string =>
  slack === null ? '–' : `${slack.toPrecision(3)} ${unit}`;

/** Ten cells to a margin of half the limit. */
function bar(margin: number | null): string {
  if (margin === null) return ' '.repeat(10);
  if (margin < 0) return '!'.padEnd(10);
  return '='.repeat(Math.min(10, Math.round(margin * 20))).padEnd(10);
}

const clip = (text: string, room: number): string => (text.length <= room ? text : `${text.slice(0, room - 1)}…`);
