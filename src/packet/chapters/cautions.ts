import type { Block, Caution, SignalWord } from '../block.ts';
import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import { tallied } from '../words.ts';
import { chapter } from './chapter.ts';

/** What can hurt someone, worked out from this board's numbers. */
export function cautions(review: Review): Chapter | undefined {
  if (!review.cautions.length) return undefined;
  return chapter('cautions', [reading, ...gravestFirst(review.cautions)]);
}

const reading: Block = {
  kind: 'paragraph',
  text: [
    "Worked out from this board's own worst-case numbers, rounded toward danger. A caution whose number is missing is shown, not left out. Level: ",
    { kind: 'strong', text: 'danger' },
    ' will kill or maim if not avoided, ',
    { kind: 'strong', text: 'warning' },
    ' could, ',
    { kind: 'strong', text: 'caution' },
    ' injures lightly, ',
    { kind: 'strong', text: 'notice' },
    ' is about things.',
  ],
};

export const signalWords: readonly SignalWord[] = ['danger', 'warning', 'caution', 'notice'];

const gravestFirst = (all: readonly Caution[]): Caution[] =>
  all.toSorted((a, b) => signalWords.indexOf(a.level) - signalWords.indexOf(b.level));

/** `1 danger`, `15 warnings`; levels that do not occur are left out. */
export function cautionCounts(all: readonly Caution[]): string[] {
  return signalWords.flatMap((level) => {
    const count = all.filter((caution) => caution.level === level).length;
    return count ? [tallied(count, level)] : [];
  });
}
