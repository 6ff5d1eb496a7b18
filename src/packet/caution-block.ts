import type { Caution as SafetyCaution } from '../safety/cautions-of.ts';
import type { Decided } from '../safety/decisions.ts';
import type { Caution } from './block.ts';
import { link, strong } from './inline.ts';
import type { Text } from './text.ts';
import { capital } from './words.ts';

/** A caution of the safety floor as a block of the packet: the same words, with where they come from. */
export function cautionBlock(caution: SafetyCaution): Caution {
  return {
    kind: 'caution',
    id: caution.id,
    level: caution.level,
    hazard: caution.hazard,
    text: [caution.text],
    precaution: [caution.precaution],
    raisedBy: raisedBy(caution),
    source: caution.sources.flatMap(
      ({ says, source, known }, i): Text => [
        `${i ? ' ' : ''}${says}${source ? `: ${withoutAddress(source)}` : ''} (${known}).`,
      ],
    ),
    circuits: caution.circuits,
    steps: caution.at.map(({ key }) => key),
    sources: caution.sources.flatMap(({ source }) => source ?? []),
    reminder: [caution.reminders.map(({ says }) => says).join(' ')],
    rules: caution.reminders,
  };
}

/** The address of a source stands with the others in chapter 16. */
const withoutAddress = (source: string): string => source.replace(/ \([^()]*\.[a-z]{2,}[^()]*\)$/, '');

function raisedBy({ reason, assumed, circuits, at, decision }: SafetyCaution): Text {
  return [
    `${capital(reason)}.`,
    ...assumed.map((one) => ` ${capital(one)}.`),
    ...(circuits.length
      ? [' See ', ...circuits.flatMap((id, i): Text => [...(i ? [', '] : []), link(id, id)]), '.']
      : []),
    ...(at.length ? [` Met at: ${at.map(({ says }) => says).join('; ')}.`] : []),
    ...(decision ? [' ', strong(decisionText(decision))] : []),
  ];
}

/** @example decisionText({ is: 'lowered', from: 'warning', to: 'caution', reason: 'a guard stands before it', role: 'safety', date: '2026-03-01' }) */
export function decisionText({ is, from, to, reason, role, date }: Decided): string {
  const signed = [role, date].filter((one) => one !== undefined).join(', ');
  return `${capital(is)} from ${from}${to ? ` to ${to}` : ''}${reason ? `: ${reason}` : ''}${signed ? ` (${signed})` : ''}.`;
}

/** A caution named again where the danger is met: its signal word, its number in chapter 4, the hazard, what to do. */
export const cautionLine = ({ id, level, hazard, precaution }: Caution, full: boolean): Text => [
  strong(level.toUpperCase()),
  ' ',
  link(id, id),
  ` ${hazard}.`,
  ...(full ? [' Do: ', ...precaution] : []),
];
