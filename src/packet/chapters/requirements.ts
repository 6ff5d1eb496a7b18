import type { Requirement } from '../../spec/board.ts';
import type { Block, Cell, Column, Row, Table } from '../block.ts';
import { dash, joined, link, verdictMark } from '../inline.ts';
import { marginCell } from '../margins.ts';
import type { Section } from '../packet.ts';
import { type Review, rankedChecks } from '../review.ts';
import type { Text, Verdict } from '../text.ts';
import { checkLink, requirementAnchor } from '../trail.ts';
import { counted } from '../words.ts';
import { section } from './chapter.ts';
import { decimal, sans, serif } from './columns.ts';

const requirementColumns: readonly Column[] = [
  sans('No.'),
  serif('Requirement'),
  sans('Shown by'),
  sans('Method'),
  decimal('Worst, %'),
  sans('Verdict'),
];

/** Which check shows which requirement, and what stands alone on either side. */
export function requirements(review: Review): Section | undefined {
  const { board } = review;
  if (!board.requirements.length) return undefined;
  const table: Table = {
    kind: 'table',
    id: 'requirements',
    number: '3.2',
    caption: [
      'Each requirement takes the worst verdict of the checks that show it. Methods: A analysis, T test, I inspection, R review of design.',
    ],
    columns: requirementColumns,
    groups: [{ rows: board.requirements.map((one) => requirementRow(review, one)) }],
    wide: true,
  };
  return section('summary', 2, 'requirements', 'Requirements and what shows them', [table, orphans(review)]);
}

function requirementRow(review: Review, { id, says, shownBy, method }: Requirement): Row {
  const checks = rankedChecks(review).filter((check) => shownBy.includes(check.id));
  const worst = checks[0];
  const margin: Cell = worst ? marginCell(worst) : dash;
  const gravest = gravity.find((verdict) => checks.some((check) => check.verdict === verdict)) ?? 'not assessed';
  const deviation = gravest === 'accepted' ? checks.find((check) => check.deviation)?.deviation : undefined;
  return {
    id: requirementAnchor(id),
    cells: [
      [id],
      [says],
      shownBy.length ? shownText(review, shownBy) : ['no check shows it'],
      [method ?? (shownBy.length ? 'A' : '–')],
      margin,
      [verdictMark(gravest, { deviation })],
    ],
  };
}

const gravity: readonly Verdict[] = ['fail', 'not assessed', 'marginal', 'accepted', 'pass'];

/** All checks of a circuit as one entry: `stage.*`. */
function shownText(review: Review, shownBy: readonly string[]): Text {
  const circuits = [...new Set(shownBy.map((id) => id.split('.')[0]!))];
  const entries = circuits.flatMap((circuit): Text[] => {
    const all = review.circuits.get(circuit)?.checks.map(({ id }) => id) ?? [];
    const named = shownBy.filter((id) => id.startsWith(`${circuit}.`));
    return all.length > 1 && all.every((id) => named.includes(id))
      ? [[link(`${circuit}.*`, circuit)]]
      : named.map((id): Text => [checkLink(id)]);
  });
  return joined(entries, ', ');
}

/** Both ways: a requirement that nothing shows, a check that no requirement asks for. */
function orphans({ board, findings }: Review): Block {
  const unshown = board.requirements.filter(({ shownBy }) => !shownBy.length);
  const unasked = findings.checks.filter(({ requirement }) => requirement === undefined);
  const first: Text = unshown.length
    ? [`No check shows ${unshown.map(({ id }) => id).join(', ')}.`]
    : ['Every requirement is shown by some check.'];
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
