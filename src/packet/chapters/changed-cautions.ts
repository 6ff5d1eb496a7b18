import type { CautionFinding } from '../../analysis/findings.ts';
import type { Block } from '../block.ts';
import { byId, type Reviewed } from '../by-id.ts';
import { link, strong } from '../inline.ts';
import type { Section } from '../packet.ts';
import type { Review } from '../review.ts';
import type { Text } from '../text.ts';
import { checkLink } from '../trail.ts';
import { section } from './chapter.ts';

/** Cautions that came, went or changed their level, and deviations that were opened or closed. */
export function changedCautions(review: Review, previous: Reviewed): Section | undefined {
  const lines = [...cautionLines(review, previous), ...deviationLines(review, previous)];
  if (!lines.length) return undefined;
  return section(
    'changes',
    4,
    'cautions',
    'Cautions and deviations',
    lines.map((text): Block => ({ kind: 'paragraph', text })),
  );
}

function cautionLines({ findings, cautions }: Review, previous: Reviewed): Text[] {
  const [before, after] = [byId(previous.findings.cautions), byId(findings.cautions)];
  const words = new Map(cautions.map(({ id, hazard }) => [id, `, ${hazard.toLowerCase()}`]));
  const named = ({ id, level }: CautionFinding): Text => [
    strong(`${level} `),
    words.has(id) ? link(id, id) : id,
    words.get(id) ?? '',
  ];
  const came = findings.cautions.filter(({ id }) => !before.has(id));
  const went = previous.findings.cautions.filter(({ id }) => !after.has(id));
  const moved = findings.cautions.filter(({ id, level }) => before.has(id) && before.get(id)!.level !== level);
  return [
    ...came.map((caution): Text => ['New: ', ...named(caution), '.']),
    ...went.map((caution): Text => ['No longer called for: ', ...named(caution), '.']),
    ...moved.map((caution): Text => [...named(caution), `, was ${before.get(caution.id)!.level}.`]),
  ];
}

function deviationLines({ board }: Review, previous: Reviewed): Text[] {
  const checksOf = ({ deviations }: Reviewed['board']) => new Set(deviations.map(({ check }) => check));
  const [before, after] = [checksOf(previous.board), checksOf(board)];
  return [
    ...board.deviations
      .filter(({ check }) => !before.has(check))
      .map(({ id, check }): Text => [`Deviation ${id} is new: `, checkLink(check), '.']),
    ...previous.board.deviations
      .filter(({ check }) => !after.has(check))
      .map(({ check }): Text => [`The deviation on ${check} is closed.`]),
  ];
}
