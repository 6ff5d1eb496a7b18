import type { Input } from '../../spec/board.ts';
import type { Row, Table } from '../block.ts';
import { plainTyped } from '../figures.ts';
import { dash, math, strong } from '../inline.ts';
import type { Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { usedIn } from '../trail.ts';
import { counted, sentence } from '../words.ts';
import { section } from './chapter.ts';
import { decimal, sans, serif, unit } from './columns.ts';

/** Factors by which ratings are cut, and who says so. */
export function derating(review: Review, number: () => string): Section | undefined {
  const { board, trail } = review;
  if (!board.derating.length) return undefined;
  const used = board.derating.filter(
    ({ id }) => (trail.uses.get(id)?.length ?? 0) + (trail.limits.get(id)?.length ?? 0) > 0,
  );
  if (!used.length) return undefined;
  const idle = board.derating.length - used.length;
  const { policy } = board;
  const intro: Text = policy
    ? [strong(`${policy.title}.`), ` ${sentence(policy.says)}`]
    : ["This board's own table of factors."];
  const rest: Text = idle
    ? [` ${sentence(`${counted(idle, 'factor')} of the policy ${idle === 1 ? 'has' : 'have'} no part on this board`)}`]
    : [];
  const table: Table = {
    kind: 'table',
    id: 'derating',
    number: number(),
    caption: ['Factors that this board uses. A rating times its factor is what the worst case may reach.', ...rest],
    columns: [serif('Symbol'), serif('What it asks'), decimal('Factor'), unit(), sans('Used in')],
    groups: bySource(used).map(([source, factors]) => ({
      title: source,
      rows: factors.map((input) => deratingRow(review, input)),
    })),
    wide: true,
  };
  return section('conditions', 2, 'derating', 'Derating policy', [{ kind: 'paragraph', text: intro }, table]);
}

function bySource(factors: readonly Input[]): [source: string, Input[]][] {
  const found = new Map<string, Input[]>();
  for (const input of factors) {
    const source = input.from ?? 'No source named';
    found.set(source, [...(found.get(source) ?? []), input]);
  }
  return [...found];
}

function deratingRow(review: Review, input: Input): Row {
  if (input.value.kind === 'expression') throw new Error(`${input.id} is no factor`);
  const { number, unit } = plainTyped(input.value.quantity.typ, input.unit);
  const used = usedIn(review.trail, input.id);
  return {
    id: input.id,
    cells: [[math(idTex(input.id))], [input.says || '–'], { number }, unit ? [unit] : dash, used.length ? used : dash],
  };
}
