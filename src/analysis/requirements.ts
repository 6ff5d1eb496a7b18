import type { Board, Requirement } from '../spec/board.ts';
import type { BenchFinding, CheckFinding, RequirementFinding, Verdict } from './findings.ts';

/** What each requirement rests on, and what is still to be shown. */
export function requirementFindings(
  board: Board,
  checks: readonly CheckFinding[],
  ranking: readonly string[],
  bench: readonly BenchFinding[],
): RequirementFinding[] {
  return board.requirements.map((requirement) => {
    const shown = checks.filter(({ id }) => requirement.shownBy.includes(id));
    const thinnest = ranking.find((id) => requirement.shownBy.includes(id));
    const readings = bench.filter(({ closes }) => closes.includes(requirement.id));
    const open = whatIsOpen(requirement, shown, readings);
    const outside = readings.some(({ verdict }) => verdict === 'outside');
    return {
      id: requirement.id,
      methods: requirement.methods,
      verdict: gravity.find((verdict) => shown.some((check) => check.verdict === verdict)) ?? 'not assessed',
      thinnest: thinnest ?? null,
      readings: readings.map(({ id }) => id),
      state: outside ? 'reopened' : open.length ? 'open' : 'closed',
      open,
    };
  });
}

/** Gravest first. */
const gravity: readonly Verdict[] = ['fail', 'not assessed', 'marginal', 'accepted', 'pass'];

function whatIsOpen(
  { methods, shownBy, tested, evidence }: Requirement,
  shown: readonly CheckFinding[],
  readings: readonly BenchFinding[],
): string[] {
  const failing = shown.filter(({ verdict }) => verdict === 'fail' || verdict === 'not assessed');
  const analysis = shownBy.length
    ? failing.map(({ id, verdict }) => `${id} ${verdict === 'fail' ? 'fails' : 'is not assessed'}`)
    : ['no check shows it'];
  const unread = tested.filter((point) => !readings.some(({ point: at, reads }) => (at ?? reads) === point));
  const unsure = readings.filter(({ verdict }) => verdict === 'undecided' || verdict === 'outside');
  const test = tested.length
    ? [...unread.map((point) => `${point} is not read`), ...unsure.map(({ id, verdict }) => `${id} is ${verdict}`)]
    : evidence.length
      ? []
      : ['no test is named'];
  const records = methods.filter((one) => one !== 'analysis' && one !== 'test' && !evidence.length);
  return [
    ...(methods.includes('analysis') ? analysis : failing.map(({ id }) => `${id} fails`)),
    ...(methods.includes('test') ? test : []),
    ...records.map((method) => `no record of the ${method}`),
    ...(methods.length ? [] : ['nothing shows it']),
  ];
}
