import type { CheckFinding } from '../../analysis/findings.ts';
import type { Block } from '../block.ts';
import type { Reviewed } from '../by-id.ts';
import type { Change } from '../changes.ts';
import { chapterHeads } from '../chapter-list.ts';
import { joined, link, verdictMark } from '../inline.ts';
import { numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';
import type { Review } from '../review.ts';
import type { Text } from '../text.ts';
import { checkLink } from '../trail.ts';
import { capital, counted } from '../words.ts';
import { toDoAgain } from './changed-again.ts';
import { changedCautions } from './changed-cautions.ts';
import { changedFirmware } from './changed-firmware.ts';
import { changedChecks, changedInputs, changedResults } from './changed-tables.ts';
import { chapter } from './chapter.ts';

/** What moved since the revision that this one replaces, and what must be looked at again. */
export function changed(review: Review): Chapter | undefined {
  const { previous } = review;
  if (!previous) return undefined;
  const { table } = numbering(chapterHeads.changes.number);
  const sections = [
    changedInputs(review, previous, table),
    changedChecks(review, table),
    changedResults(review, previous, table),
    changedCautions(review, previous),
    changedFirmware(review, previous, table),
    toDoAgain(review, previous),
  ].filter((one) => one !== undefined);
  const title = `${chapterHeads.changes.title} since revision ${previous.board.identity.mark}`;
  return chapter('changes', [lead(review, previous, sections)], sections, { title });
}

function lead(review: Review, previous: Reviewed, sections: readonly Section[]): Block {
  const mark = previous.board.identity.mark;
  if (!sections.length)
    return {
      kind: 'paragraph',
      lead: true,
      text: [`Nothing differs from revision ${mark} in what was given or found.`],
    };
  const { changes, findings } = review;
  const text: Text = [
    `Revision ${mark} was `,
    verdictMark(previous.findings.verdict),
    '; this one is ',
    verdictMark(findings.verdict),
    `. ${capital(counted(changes.inputs.length, 'input'))} changed, came or went. `,
    ...flips(changes.checks),
    ...again(mark, sections),
    'A bar in the left margin marks these lines throughout.',
  ];
  return { kind: 'paragraph', lead: true, text };
}

/** Checks that failed and hold now, and the other way. */
function flips(checks: readonly Change<CheckFinding>[]): Text {
  const holds = ({ verdict }: CheckFinding) => verdict === 'pass' || verdict === 'marginal';
  const both = checks.flatMap(({ id, before, after }) => (before && after ? [{ id, before, after }] : []));
  const mended = both.filter(({ before, after }) => !holds(before) && holds(after));
  const broken = both.filter(({ before, after }) => holds(before) && !holds(after));
  const said = (list: typeof both, one: string, many: string): Text =>
    list.length
      ? [
          `${capital(counted(list.length, 'check'))} ${list.length === 1 ? one : many}: `,
          ...joined(
            list.map(({ id }): Text => [checkLink(id)]),
            ', ',
          ),
          '. ',
        ]
      : [];
  return [
    ...said(mended, 'that did not hold does now', 'that did not hold do now'),
    ...(broken.length
      ? said(broken, 'that held does not now', 'that held do not now')
      : ['Nothing that held has stopped holding. ']),
  ];
}

/** What was signed or tested before and is so no longer. */
function again(mark: string, sections: readonly Section[]): Text {
  const list = sections.find(({ id }) => id === 'changes-again');
  return list
    ? [
        `What was signed and tested under revision ${mark} and no longer counts stands in `,
        link(list.number, list.id),
        '. ',
      ]
    : [];
}
