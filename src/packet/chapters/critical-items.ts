import type { RoomFinding } from '../../analysis/findings.ts';
import type { Circuit, Input } from '../../spec/board.ts';
import type { Row, Table } from '../block.ts';
import { fixed } from '../figures.ts';
import { joined, link, math, strong } from '../inline.ts';
import { marginText } from '../margins.ts';
import type { Numbering } from '../numbering.ts';
import type { Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { checkLink, saysOf } from '../trail.ts';
import { appliedTo } from './applied.ts';
import { section } from './chapter.ts';
import { sans, serif, wide } from './columns.ts';

/** A rating that bears more of what is allowed than this. */
const loaded = 0.8;
/** A part that brings more than this share of the worst-case range of a result with a thin margin. */
const deciding = 0.25;
/** A nominal value that may move by less than this before a check fails. */
const tight = 0.05;

interface Reason {
  readonly text: Text;
  readonly control: string;
}

/** What to watch when the board is built: parts on which a thin margin hangs, ratings that are nearly used up, values with no room. */
export function criticalItems(review: Review, numbers: Numbering): Section | undefined {
  const rows = review.board.circuits.flatMap((circuit) =>
    circuit.inputs.filter(isPart).flatMap((input): Row[] => {
      const reasons = reasonsFor(review, input);
      return reasons.length ? [rowOf(review, circuit, input, reasons)] : [];
    }),
  );
  if (!rows.length) return undefined;
  const table: Table = {
    kind: 'table',
    id: 'critical-items',
    number: numbers.table(),
    caption: [
      `Proposed from the numbers, for a person to add to and strike from: a rating that bears more than ${fixed(loaded * 100, 0)}\u00a0% of what is allowed, a part that brings more than ${fixed(deciding * 100, 0)}\u00a0% of the worst-case range behind a thin margin, a value that may move by less than ${fixed(tight * 100, 0)}\u00a0%. What fails as a single point, or is hard to solder or to inspect, no number says.`,
    ],
    columns: [
      wide(sans('Part'), 0.1),
      wide(serif('Symbol'), 0.08),
      wide(serif('What it is'), 0.22),
      wide(serif('Why it is critical'), 0.36),
      wide(serif('Proposed control'), 0.24),
    ],
    groups: [{ rows }],
    wide: true,
  };
  return section('parts', 1, 'critical', 'Critical items, proposed', [table]);
}

const isPart = ({ value, refs, part, rating }: Input): boolean =>
  (value.kind === 'part' || value.kind === 'exact') && (refs !== undefined || part !== undefined || rating);

function rowOf(review: Review, circuit: Circuit, input: Input, reasons: readonly Reason[]): Row {
  return {
    id: `critical-${input.id}`,
    cells: [
      input.refs ? [strong(input.refs)] : [link(circuit.id, circuit.id)],
      [math(idTex(input.id))],
      [link(saysOf(review.trail, review.inputs, input) ?? input.id, `part-${input.id}`)],
      joined(
        reasons.map(({ text }) => text),
        ' ',
      ),
      [[...new Set(reasons.map(({ control }) => control))].join('; ')],
    ],
  };
}

function reasonsFor(review: Review, input: Input): Reason[] {
  return [...loadedRating(review, input), ...behindThinMargin(review, input), ...withoutRoom(review, input)];
}

function loadedRating(review: Review, input: Input): Reason[] {
  const applied = appliedTo(review, input);
  if (!applied || applied.ratio <= loaded) return [];
  return [
    {
      text: [
        'Bears ',
        fixed(applied.ratio * 100, 0, 'up'),
        '\u00a0% of what is allowed: ',
        checkLink(applied.check.id),
        '.',
      ],
      control: 'no lower rating, no other maker without a new calculation',
    },
  ];
}

/** The thin checks whose limited result the part moves most. */
function behindThinMargin(review: Review, input: Input): Reason[] {
  const thin = review.findings.checks.filter(({ verdict }) => verdict !== 'pass');
  return thin.flatMap((finding): Reason[] => {
    const check = review.checks.get(finding.id)!;
    const result = check.left.kind === 'symbol' ? review.findings.results[check.left.name] : undefined;
    const share = result?.sensitivity.find((one) => one.input === input.id)?.worst ?? 0;
    if (share <= deciding || input.value.kind !== 'part') return [];
    return [
      {
        text: [
          `Brings ${fixed(share * 100, 0)}\u00a0% of the range behind `,
          checkLink(finding.id),
          ` (${marginText(finding)}).`,
        ],
        control: 'value and tolerance checked at receipt; no wider tolerance',
      },
    ];
  });
}

function withoutRoom(review: Review, input: Input): Reason[] {
  const room = review.findings.room.find((one) => one.input === input.id);
  if (!room || room.rating) return [];
  const nearest = nearestEnd(room);
  if (!nearest || nearest.share >= tight) return [];
  return [
    {
      text: [
        `May move by ${fixed(nearest.share * 100, 1, 'down')}\u00a0% before `,
        checkLink(nearest.check),
        ' fails.',
      ],
      control: 'this value and no neighbour of its series',
    },
  ];
}

function nearestEnd({ nominal, low, high }: RoomFinding): { share: number; check: string } | undefined {
  return [low, high]
    .flatMap((end) => (end ? [{ share: Math.abs(end.value / nominal - 1), check: end.check }] : []))
    .sort((a, b) => a.share - b.share)[0];
}
