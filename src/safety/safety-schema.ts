import { z } from 'zod';
import { symbolName } from '../spec/circuit-schema.ts';
import { cautionLevels } from '../spec/spec-schema.ts';

const sentence = z.string().trim().min(1);
const key = z.string().regex(/^[A-Za-z][A-Za-z0-9-]*$/, 'name');
const keys = z.array(key).min(1);

/** ANSI Z535.6 signal words, gravest first. */
export const levels = cautionLevels;
export type Level = (typeof levels)[number];

/** How a source is known. `policy` is a figure of our own and no standard; `arithmetic` can be worked out again. */
export const knownBy = ['read', 'memory', 'common practice', 'policy', 'arithmetic'] as const;

const words = z.strictObject({ text: sentence.optional(), precaution: sentence.optional() });

export const cautionSchema = z.strictObject({
  level: z.enum(levels),
  hazard: sentence,
  /** A comparison over hazard quantities and facts, or `always`. */
  trigger: sentence,
  /** What, and what it does; `{E_cap}` stands for the number of this board. */
  text: sentence,
  /** How to avoid it. */
  precaution: sentence,
  /** Words in place of the others where one of their numbers is infinite, or unknown. */
  'if endless': words.optional(),
  'if unknown': words.optional(),
  at: keys,
  sources: z.array(z.strictObject({ says: sentence, from: key.optional(), known: z.enum(knownBy) })).min(1),
  reminders: keys,
  'may be dismissed': z.literal('no').optional(),
});

export const quantitySchema = z.strictObject({
  says: sentence,
  unit: sentence,
  danger: z.enum(['up', 'down']),
  several: z.literal('sum').optional(),
  equals: sentence.optional(),
  assumed: sentence.optional(),
  default: z.strictObject({ is: sentence, why: sentence }).optional(),
  'read from': symbolName.optional(),
  condition: symbolName.optional(),
  'zero when': sentence.optional(),
  'infinite when': sentence.optional(),
  digits: z
    .string()
    .regex(/^[1-6]$/)
    .transform(Number)
    .optional(),
  /** Stands in a sentence in place of the number. */
  unknown: sentence,
  endless: sentence.optional(),
});

export const flagSchema = z.strictObject({
  yes: sentence,
  no: sentence,
  'yes if given': z.array(symbolName).optional(),
});

/** One file of safety data: any of the tables, a part of each. */
export const safetyFileSchema = z.strictObject({
  cautions: z.record(z.string().regex(/^S\d{2}$/, 'name'), cautionSchema).optional(),
  quantities: z.record(symbolName, quantitySchema).optional(),
  flags: z.record(symbolName, flagSchema).optional(),
  places: z.record(key, sentence).optional(),
  reminders: z.record(key, sentence).optional(),
  sources: z.record(key, sentence).optional(),
});
export type SafetyFile = z.output<typeof safetyFileSchema>;
export type CautionEntry = z.output<typeof cautionSchema>;
export type QuantityEntry = z.output<typeof quantitySchema>;
export type FlagEntry = z.output<typeof flagSchema>;
