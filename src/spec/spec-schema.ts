import { z } from 'zod';
import { circuit, symbolName } from './circuit-schema.ts';
import { action, decision, deviation, requirement, review } from './record-schema.ts';

const sentence = z.string().trim().min(1);
const quantityText = z.string().trim().min(1);
const date = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'date');

export const cautionLevels = ['danger', 'warning', 'caution', 'notice'] as const;
export const statuses = ['draft', 'for review', 'released'] as const;

/** A range, or a range with what it is. */
const condition = z.union([
  quantityText.transform((is): { is: string; says?: string | undefined } => ({ is })),
  z.strictObject({ is: quantityText, says: sentence.optional() }),
]);

/** The whole spec file of one revision. Values are still text here; `readSpec` gives them meaning. */
export const specSchema = z.strictObject({
  /** Title of the board, at most 40 characters on the cover. */
  board: sentence,
  /** Document number: `OC-210`. */
  document: sentence,
  /** Revision mark: `B`. */
  revision: z.string().trim().min(1).max(8),
  /** Folder of the revision that this one replaces: `rev-a`. */
  supersedes: z
    .string()
    .regex(/^[a-z0-9][a-z0-9._-]*$/i, 'folder')
    .optional(),
  issued: date,
  status: z.enum(statuses),
  purpose: sentence,
  /** Legal owner, department and the like for the title block. */
  owner: sentence.optional(),
  department: sentence.optional(),
  designer: sentence.optional(),
  approver: sentence.optional(),
  classification: sentence.optional(),
  language: z
    .string()
    .regex(/^[a-z]{2}(-[A-Z]{2})?$/, 'language')
    .optional(),
  supplement: sentence.optional(),
  /** Ranges that every board must endure. */
  conditions: z.record(symbolName, condition).optional(),
  /** Named operating cases; a condition that a case does not name keeps its full range. */
  cases: z.record(z.string(), z.record(symbolName, quantityText)).optional(),
  margins: z
    .strictObject({
      /** Name of a policy, or a table of your own. */
      derating: z.union([z.string(), z.record(symbolName, quantityText)]).optional(),
      /** A check that holds by less is marginal. */
      target: quantityText.optional(),
    })
    .optional(),
  requirements: z.record(z.string(), requirement).optional(),
  circuits: z.record(symbolName, circuit).optional(),
  /** Checks that need not hold, because somebody answers for it. */
  deviations: z.array(deviation).optional(),
  decisions: z.record(z.string(), decision).optional(),
  actions: z.record(z.string(), action).optional(),
  /** What was said and decided at the review meeting. */
  review: review.optional(),
  /** Facts for the safety cautions that no equation gives: flags and numbers by name. */
  safety: z.record(symbolName, z.string()).optional(),
  /** Levels of safety cautions that this board raises, or lowers or dismisses for a reason, by the caution's id. */
  cautions: z
    .record(
      symbolName,
      z.strictObject({
        level: z.enum(cautionLevels).optional(),
        dismissed: z.literal('yes').optional(),
        reason: sentence.optional(),
        role: sentence.optional(),
        date: date.optional(),
      }),
    )
    .optional(),
});
export type Spec = z.output<typeof specSchema>;
