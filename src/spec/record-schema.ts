import { z } from 'zod';
import { described } from './described.ts';

/** What a spec says about requirements, decisions and the review: words, roles and dates. */
const sentence = z.string().trim().min(1);
const sentences = z.union([z.array(sentence).min(1), sentence.transform((one) => [one])]);
const date = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'date');
const yesNo = z.enum(['yes', 'no']);

export const verifications = ['analysis', 'test', 'inspection', 'demonstration', 'review'] as const;
export const reviewKinds = ['concept', 'detail', 'final', 'pre-production'] as const;
export const commentClasses = ['major', 'minor', 'editorial', 'question'] as const;
export const outcomes = ['pass', 'pass with actions', 'repeat the review', 'stop'] as const;

const about = described(
  sentences.optional(),
  'Circuits, results, inputs, checks or requirements that it is about.',
  'stage',
  ['stage.junction', 'REQ-1'],
);

export const requirement = z.strictObject({
  says: described(
    sentence,
    'The requirement in one sentence.',
    'The board shall give full torque down to an empty pack',
  ),
  'shown by': described(sentences.optional(), 'Checks that show it; `stage.*` stands for all of a circuit.', [
    'pack.window',
    'stage.*',
  ]),
  method: described(
    sentences.optional(),
    'How it is verified, in words or first letters; by analysis where checks show it, by test where it is tested.',
    'inspection',
    'A, T',
  ),
  'tested at': described(sentences.optional(), 'Test points or results whose readings in bench.csv show it.', [
    'bus_sense.tap',
  ]),
  criterion: described(
    sentence.optional(),
    'When it counts as met, where the checks do not say so.',
    'No mark on the label after the rub test',
  ),
  evidence: described(sentences.optional(), 'Documents that show it.', 'inspection record OC-I-4'),
  why: described(sentence.optional(), 'Why it is required.', 'The cart must climb the ramp at the end of the day'),
  from: described(sentence.optional(), 'Who or what requires it.', 'Product specification OC-S-1, 4.2'),
});

export const deviation = z.strictObject({
  check: described(z.string(), 'The check that does not hold.', 'stage.junction'),
  reason: described(sentence, 'Why the board is accepted all the same.', 'Bench shows 6 K less than computed'),
  approved: described(date, 'When it was approved, year-month-day.', '2026-03-20'),
  by: described(sentence.optional(), 'Who approved it, by role.', 'Chief engineer'),
  effect: described(sentence.optional(), 'What the shortfall does in use.', 'Shorter life above 40 °C'),
  'applies to': described(sentence.optional(), 'Boards that it holds for.', 'serials 001 to 020'),
  until: described(sentence.optional(), 'What ends it.', 'revision C'),
});

export const decision = z.strictObject({
  what: described(sentence, 'What was decided.', 'One shunt a phase'),
  why: described(sentence, 'Why.', 'Two would not fit beside the terminals'),
  'instead of': described(sentences.optional(), 'What else was considered, each with why not.', [
    'Two shunts: no room beside the terminals',
  ]),
  date: described(date, 'When, year-month-day.', '2026-03-10'),
  by: described(sentence.optional(), 'Who decided, by role.', 'Design engineer'),
  about,
});

export const action = z.strictObject({
  says: described(sentence, 'What is to be done.', 'Measure the case temperature at 45 °C'),
  who: described(sentence.optional(), 'Who does it, by role.', 'Test engineer'),
  due: described(date.optional(), 'Until when, year-month-day.', '2026-04-01'),
  'blocks release': described(yesNo.optional(), 'Whether the board must wait for it.', 'yes'),
  about,
  closed: described(date.optional(), 'When it was closed, year-month-day; open without it.', '2026-04-02'),
  answer: described(sentence.optional(), 'What came of it.', '71 °C at 45 °C ambient, as predicted'),
});

const criterion = z.union([
  sentence.transform((says): { says: string; met?: 'yes' | 'no' | undefined; remark?: string | undefined } => ({
    says,
  })),
  z.strictObject({
    says: described(sentence, 'The criterion.', 'Schematic and layout under revision control'),
    met: described(yesNo.optional(), 'Whether it was met.', 'yes'),
    remark: described(sentence.optional(), 'What was noted.', 'Layout of the power stage seen on screen'),
  }),
]);

export const comment = z.strictObject({
  says: described(sentence, 'The comment.', 'Label the hot side of the shunt on the silk screen'),
  class: described(z.enum(commentClasses), 'How grave it is.', 'minor'),
  by: described(sentence.optional(), 'Who raised it, by role.', 'Test engineer'),
  about,
  answer: described(sentence.optional(), 'What was answered.', 'Added in the layout'),
  action: described(sentence.optional(), 'Action that came of it.', 'A-1'),
});

export const review = z.strictObject({
  kind: described(z.enum(reviewKinds), 'Which review it was.', 'detail'),
  date: described(date, 'Day of the meeting, year-month-day.', '2026-03-18'),
  present: described(sentences, 'Roles in the room.', ['Design engineer', 'Test engineer']),
  aims: described(sentences.optional(), 'What the meeting was to settle.', 'Release for the pilot run'),
  entrance: described(z.array(criterion).optional(), 'What had to be there before the meeting.', [
    'Packet issued a week before',
  ]),
  success: described(z.array(criterion).optional(), 'What had to be shown in it.', ['No check fails']),
  comments: described(z.record(z.string(), comment).optional(), 'What was remarked, by number.', {
    'C-1': { says: 'Label the hot side of the shunt', class: 'minor' },
  }),
  outcome: described(
    z.enum(outcomes).optional(),
    'What was decided; blank boxes are printed without it.',
    'pass with actions',
  ),
  conditions: described(sentences.optional(), 'Conditions of the outcome.', 'Action A-1 closed before release'),
});
