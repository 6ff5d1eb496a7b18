import type { RequirementFinding } from '../../analysis/findings.ts';
import type { Requirement } from '../../spec/board.ts';
import type { Block, Cell, Column, Row, Table } from '../block.ts';
import { dash, em, joined, link, strong, verdictMark } from '../inline.ts';
import { marginCell } from '../margins.ts';
import { percentText } from '../numbers.ts';
import type { Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { mustHold } from '../statements.ts';
import type { Text } from '../text.ts';
import { checkLink, idLink, requirementAnchor } from '../trail.ts';
import { counted, sentence } from '../words.ts';
import { section } from './chapter.ts';
import { decimal, sans, serif, wide } from './columns.ts';

const requirementColumns: readonly Column[] = [
  sans('No.'),
  wide(serif('Requirement'), 0.25),
  sans('Method'),
  wide(serif('Met when'), 0.19),
  wide(sans('Shown by'), 0.21),
  decimal('Worst, %'),
  sans('Verdict'),
  wide(serif('State'), 0.14),
];

/** Which check, reading or record shows which requirement, and what stands alone on either side. */
export function requirements(review: Review): Section | undefined {
  const { board, findings } = review;
  if (!board.requirements.length) return undefined;
  const table: Table = {
    kind: 'table',
    id: 'requirements',
    number: '3.2',
    caption: [
      'Each requirement takes the worst verdict of the checks that show it. Methods: A analysis, T test, I inspection, D demonstration, R review of design. Closed: all of them are shown; reopened: a reading contradicts what was calculated.',
    ],
    columns: requirementColumns,
    groups: [{ rows: board.requirements.map((one, i) => requirementRow(review, one, findings.requirements[i]!)) }],
    wide: true,
    breaks: true,
  };
  return section('summary', 2, 'requirements', 'Requirements and what shows them', [table, orphans(review)]);
}

function requirementRow(review: Review, requirement: Requirement, finding: RequirementFinding): Row {
  const { id, says, why, from, shownBy } = requirement;
  const worst = finding.thinnest === null ? undefined : review.judged.get(finding.thinnest)!;
  const margin: Cell = worst ? marginCell(worst) : dash;
  const deviation =
    finding.verdict === 'accepted'
      ? shownBy.map((check) => review.judged.get(check)!).find((check) => check.deviation)?.deviation
      : undefined;
  return {
    id: requirementAnchor(id),
    cells: [
      [id],
      [says, ...(why ? [' ', em(sentence(why))] : []), ...(from ? [` (${from})`] : [])],
      [finding.methods.map((method) => method[0]!.toUpperCase()).join(', ') || '–'],
      criterion(review, requirement),
      evidence(review, requirement, finding),
      margin,
      shownBy.length ? [verdictMark(finding.verdict, { deviation })] : dash,
      state(finding),
    ],
  };
}

/** As the spec says; else what its checks ask for. */
function criterion(review: Review, { criterion: stated, shownBy, tested }: Requirement): Text {
  if (stated) return [stated];
  const { target } = review.board;
  const margin = target > 0 ? ` with ${percentText(target)} to spare` : '';
  const checks: Text =
    shownBy.length === 1
      ? [...mustHold(review.checks.get(shownBy[0]!)!), ' in the worst case']
      : shownBy.length
        ? [`${counted(shownBy.length, 'check')} hold in the worst case${margin}`]
        : [];
  const test = tested.length ? [shownBy.length ? '; ' : '', 'readings as predicted'] : [];
  return checks.length || test.length ? [...checks, ...test.filter(Boolean)] : dash;
}

/** Checks, then test points with their readings, then records. */
function evidence(
  review: Review,
  { shownBy, tested, evidence: records }: Requirement,
  finding: RequirementFinding,
): Text {
  const readings = review.findings.bench.filter(({ id }) => finding.readings.includes(id));
  const points = tested.map((point): Text => {
    const read = readings.filter((one) => (one.point ?? one.reads) === point);
    const numbers = read.flatMap(({ id }) => [', ', link(id, benchAnchor(id))]).slice(1);
    return [...pointLink(review, point), ...(numbers.length ? [' (', ...numbers, ')'] : [])];
  });
  const all = [...shownText(review, shownBy), ...points, ...records.map((one): Text => [one])];
  return all.length ? joined(all, ', ') : ['no check shows it'];
}

export const benchAnchor = (id: string): string => `bench-${id}`;

/** A test point where it stands in the bring-up sheet; a result at its equation. */
export const pointLink = (review: Review, point: string): Text =>
  review.findings.test_points.some(({ id }) => id === point)
    ? [link(point, `test-${point}`)]
    : idLink(review.trail, point);

/** All checks of a circuit as one entry: `stage.*`. */
function shownText(review: Review, shownBy: readonly string[]): Text[] {
  const circuits = [...new Set(shownBy.map((id) => id.split('.')[0]!))];
  return circuits.flatMap((circuit): Text[] => {
    const all = review.circuits.get(circuit)?.checks.map(({ id }) => id) ?? [];
    const named = shownBy.filter((id) => id.startsWith(`${circuit}.`));
    return all.length > 1 && all.every((id) => named.includes(id))
      ? [[link(`${circuit}.*`, circuit)]]
      : named.map((id): Text => [checkLink(id)]);
  });
}

function state({ state: is, open }: RequirementFinding): Text {
  if (is === 'closed') return ['closed'];
  return [is === 'reopened' ? strong('reopened') : 'open', `: ${open.join('; ')}`];
}

/** Both ways: a requirement that nothing shows, a check that no requirement asks for. */
function orphans({ board, findings }: Review): Block {
  const unshown = board.requirements.filter(
    ({ shownBy, tested, evidence: records }) => !shownBy.length && !tested.length && !records.length,
  );
  const unasked = findings.checks.filter(({ requirement }) => requirement === undefined);
  const first: Text = unshown.length
    ? [`Nothing shows ${unshown.map(({ id }) => id).join(', ')}.`]
    : ['Every requirement is shown by something.'];
  const second: Text = unasked.length
    ? [
        ` No requirement asks for ${counted(unasked.length, 'check')}: `,
        ...joined(
          unasked.map(({ id }): Text => [checkLink(id)]),
          ', ',
        ),
        '.',
      ]
    : [' Every check shows some requirement.'];
  return { kind: 'paragraph', text: [...first, ...second] };
}
