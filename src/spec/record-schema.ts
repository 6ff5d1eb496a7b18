import { z } from 'zod';

/** What a spec says about requirements, decisions and the review: words, roles and dates. */
const sentence = z.string().trim().min(1);
const sentences = z.union([z.array(sentence).min(1), sentence.transform((one) => [one])]);
const date = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'date');
const yesNo = z.enum(['yes', 'no']);

export const verifications = ['analysis', 'test', 'inspection', 'demonstration', 'review'] as const;
export const reviewKinds = ['concept', 'detail', 'final', 'pre-production'] as const;
export const commentClasses = ['major', 'minor', 'editorial', 'question'] as const;
export const outcomes = ['pass', 'pass with actions', 'repeat the review', 'stop'] as const;

export const requirement = z.strictObject({
  /** The requirement as a sentence with "shall". */
  says: sentence,
  /** Checks that show it: `stage.junction`, or `stage.*`. */
  'shown by': sentences.optional(),
  /** How it is verified: words or their first letters, `A, T`. By analysis where checks show it, by test where it is tested. */
  method: sentences.optional(),
  /** Test points, or results, whose readings in `bench.csv` show it. */
  'tested at': sentences.optional(),
  /** When it counts as met, where the checks do not say so. */
  criterion: sentence.optional(),
  /** Documents that show it: `inspection record OC-I-4`. */
  evidence: sentences.optional(),
  /** Why it is required. */
  why: sentence.optional(),
  /** Who or what requires it. */
  from: sentence.optional(),
});

export const deviation = z.strictObject({
  check: z.string(),
  reason: sentence,
  approved: date,
  by: sentence.optional(),
  /** What the shortfall does in use. */
  effect: sentence.optional(),
  /** Boards that it holds for: `serials 001 to 020`. */
  'applies to': sentence.optional(),
  /** What ends it. */
  until: sentence.optional(),
});

export const decision = z.strictObject({
  /** What was decided. */
  what: sentence,
  why: sentence,
  /** What else was considered, each with why not. */
  'instead of': sentences.optional(),
  date,
  /** Role of who decided. */
  by: sentence.optional(),
  /** Circuit, result, input, check or requirement that it is about. */
  about: sentences.optional(),
});

export const action = z.strictObject({
  says: sentence,
  /** Role of its owner. */
  who: sentence.optional(),
  due: date.optional(),
  'blocks release': yesNo.optional(),
  about: sentences.optional(),
  /** Day on which it was closed; open without it. */
  closed: date.optional(),
  /** What came of it. */
  answer: sentence.optional(),
});

const criterion = z.union([
  sentence.transform((says): { says: string; met?: 'yes' | 'no' | undefined; remark?: string | undefined } => ({
    says,
  })),
  z.strictObject({ says: sentence, met: yesNo.optional(), remark: sentence.optional() }),
]);

export const comment = z.strictObject({
  says: sentence,
  class: z.enum(commentClasses),
  /** Role of who raised it. */
  by: sentence.optional(),
  about: sentences.optional(),
  answer: sentence.optional(),
  /** Action that came of it. */
  action: sentence.optional(),
});

export const review = z.strictObject({
  kind: z.enum(reviewKinds),
  /** Day of the meeting. */
  date,
  /** Roles in the room; nobody's name. */
  present: sentences,
  aims: sentences.optional(),
  /** What had to be there before the meeting. */
  entrance: z.array(criterion).optional(),
  /** What had to be shown in it. */
  success: z.array(criterion).optional(),
  comments: z.record(z.string(), comment).optional(),
  /** Decided, with its conditions; blank boxes are printed without it. */
  outcome: z.enum(outcomes).optional(),
  conditions: sentences.optional(),
});
