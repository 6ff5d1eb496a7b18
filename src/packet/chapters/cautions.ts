import type { Block, Caution, SignalWord, Table } from '../block.ts';
import { decisionText } from '../caution-block.ts';
import { link } from '../inline.ts';
import { numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';
import type { Review } from '../review.ts';
import type { Text } from '../text.ts';
import { capital, tallied } from '../words.ts';
import { chapter, section } from './chapter.ts';
import { sans, serif } from './columns.ts';

/** What can hurt someone, worked out from this board's numbers. */
export function cautions(review: Review): Chapter | undefined {
  if (!review.cautions.length) return undefined;
  const sections = review.considered.length ? [consideredSection(review)] : [];
  return chapter('cautions', [reading, ...rulesOnce(gravestFirst(review.cautions))], sections);
}

/** Also what is not shown, and on which number: a hazard that nobody looked at is the dangerous one. */
function consideredSection({ considered }: Review): Section {
  const table: Table = {
    kind: 'table',
    id: 'hazards-considered',
    number: numbering(4).table(),
    caption: ['Every hazard that was considered for this board, shown or not, with the number and the threshold.'],
    columns: [sans('No.'), serif('Hazard'), sans('Level'), sans('Outcome'), serif('Why')],
    groups: [
      {
        rows: considered.map(({ id, hazard, level, outcome, reason, decision }) => ({
          cells: [
            [outcome === 'shown' ? link(id, id) : id],
            [hazard],
            [level],
            [outcome],
            [`${capital(reason)}.${decision ? ` ${decisionText(decision)}` : ''}`],
          ],
        })),
      },
    ],
    wide: true,
  };
  return section('cautions', 1, 'considered', 'Every hazard considered', [table]);
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

/** Each standing rule in full where it is met first, later by its key: what is read twenty times is not read. */
function rulesOnce(all: readonly Caution[]): Caution[] {
  const first = new Map<string, string>();
  return all.map((caution) => {
    if (!caution.rules) return caution;
    const reminder = caution.rules.flatMap(({ key, says }, i): Text => {
      const space = i ? [' '] : [];
      const known = first.get(key);
      if (known !== undefined) return [...space, `Rule ${key}, as at `, link(known, known), '.'];
      first.set(key, caution.id);
      return [...space, `Rule ${key}. ${says}`];
    });
    return { ...caution, reminder };
  });
}

/** `1 danger`, `15 warnings`; levels that do not occur are left out. */
export function cautionCounts(all: readonly Caution[]): string[] {
  return signalWords.flatMap((level) => {
    const count = all.filter((caution) => caution.level === level).length;
    return count ? [tallied(count, level)] : [];
  });
}
