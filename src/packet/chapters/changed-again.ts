import type { StimulusFinding } from '../../analysis/findings.ts';
import type { Block } from '../block.ts';
import { byId, type Reviewed } from '../by-id.ts';
import { threshold } from '../changes.ts';
import { joined, link, name, strong } from '../inline.ts';
import type { Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { parted } from '../symbols.ts';
import type { Text } from '../text.ts';
import { changedConstants } from './changed-firmware.ts';
import { section } from './chapter.ts';
import { isOpen } from './record/closed-actions.ts';

/** What was signed or tested under the revision before and no longer counts, and what was closed since. */
export function toDoAgain(review: Review, previous: Reviewed): Section | undefined {
  const lines = [
    ...sections(review, previous),
    ...tests(review, previous),
    ...firmware(review, previous),
    ...closed(review, previous),
  ];
  if (!lines.length) return undefined;
  return section(
    'changes',
    6,
    'again',
    'To be signed and tested again',
    lines.map((text): Block => ({ kind: 'paragraph', text })),
  );
}

/** Sections of chapter 7 in which something differs. */
function sections({ changes, trail, previous }: Review, { board }: Reviewed): Text[] {
  const moved = new Set([...changes.ids].map((id) => parted(id).circuit).filter((id) => id !== undefined));
  const here = [...trail.sections].filter(([id]) => moved.has(id));
  if (!here.length || !previous) return [];
  const list = joined(
    here.map(([id, number]): Text => [link(number, id)]),
    ', ',
  );
  return [[strong('Sign again. '), `Signatures under revision ${board.identity.mark} do not cover `, ...list, '.']];
}

/** Points that are new, or whose prediction moved: their readings under the old revision say nothing about this one. */
function tests({ findings }: Review, previous: Reviewed): Text[] {
  const before = byId(previous.findings.test_points);
  const again = findings.test_points.filter((now) => {
    const then = before.get(now.id);
    return !then || movedBetween(then, now);
  });
  if (!again.length) return [];
  const list = joined(
    again.map(({ id }): Text => [link(id, `test-${id}`)]),
    ', ',
  );
  const kept = findings.test_points.length - again.length;
  return [
    [
      strong('Test again. '),
      ...list,
      kept ? `. The other ${kept === 1 ? 'point is' : `${kept} points are`} predicted as before.` : '.',
    ],
  ];
}

function movedBetween(then: StimulusFinding, now: StimulusFinding): boolean {
  if (then.unit !== now.unit || then.reads !== now.reads) return true;
  const pairs = [
    [then.min, now.min],
    [then.expected, now.expected],
    [then.max, now.max],
  ] as const;
  const size = Math.max(...pairs.flat().map(Math.abs));
  return pairs.some(([a, b]) => Math.abs(a - b) > threshold * size);
}

function firmware(review: Review, previous: Reviewed): Text[] {
  const changes = changedConstants(review, previous);
  if (!changes.length) return [];
  return [
    [
      strong('Build again. '),
      'Firmware with ',
      name('constants.h'),
      ' of this revision; its constants that differ stand in ',
      link('5.5', 'changes-firmware'),
      '.',
    ],
  ];
}

/** Actions of the revision before that are closed here, or were dropped. */
function closed({ board }: Review, previous: Reviewed): Text[] {
  const open = previous.board.actions.filter(isOpen);
  const gone = open.filter(({ id, says }) => !board.actions.some((now) => now.id === id && now.says === says));
  const done = open.filter(({ id, says }) =>
    board.actions.some((now) => now.id === id && now.says === says && !isOpen(now)),
  );
  const mark = previous.board.identity.mark;
  const text = (list: typeof open): string =>
    list.map(({ id, says }) => `${id} (${says.replace(/[.\s]+$/, '')})`).join('; ');
  return [
    ...(done.length ? [[strong('Closed since. '), `${text(done)}.`]] : []),
    ...(gone.length ? [[strong(`Open under revision ${mark}, not among the actions here. `), `${text(gone)}.`]] : []),
  ];
}
