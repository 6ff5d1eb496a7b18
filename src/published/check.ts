import { parse } from 'yaml';
import { z } from 'zod';

/**
 * How the expected figure is known. `read`: seen in a copy of the source named. `memory`: a well-known value, recalled.
 * `recomputed`: worked out from the equation named, independently of this project. `common practice`: what the trade does.
 */
export const knownBy = ['read', 'memory', 'recomputed', 'common practice'] as const;
export type KnownBy = (typeof knownBy)[number];

const texts = z.record(z.string(), z.coerce.string());
/** Several rows of one table: what each is given beside the rest, and what each gives. */
const run = z.strictObject({ given: texts.default({}), gives: texts });

const head = {
  id: z.string(),
  title: z.string(),
  source: z.string(),
  known: z.enum(knownBy),
  notes: z.string().optional(),
  given: texts.default({}),
  gives: texts.optional(),
  runs: z.array(run).optional(),
};

const equation = z.strictObject({ is: z.coerce.string(), unit: z.string(), says: z.string() });
const statement = z.strictObject({ holds: z.string(), because: z.string() });

const checkSchema = z.union([
  /** A method of the handbook; what is not given stands as in its worked example. */
  z.strictObject({ ...head, method: z.string() }),
  /** A derating policy: `given` a rating by the name of its factor, `gives` what the policy allows of it. */
  z.strictObject({ ...head, policy: z.string() }),
  /** Quantities as typed: `gives` each of them in other units. */
  z.strictObject({ ...head, units: z.literal('as typed') }),
  /** A circuit written in place and calculated whole; `gives` a figure of it: `V_out worst max`. */
  z.strictObject({
    ...head,
    equations: z.record(z.string(), equation),
    checks: z.record(z.string(), statement).optional(),
    /** Coefficients of measured values, as a spec has them: `V with I`. */
    correlations: texts.optional(),
    trials: z.number().int().default(100_000),
  }),
  /** A function of the statistics by its name. */
  z.strictObject({ ...head, statistic: z.string() }),
]);

/** A figure that somebody outside this project stands for, and what here must come out the same. */
export type PublishedCheck = z.output<typeof checkSchema>;

/** The checks of one file. Throws a ZodError when a check has no source, no word on how it is known, or a key too many. */
export const readChecks = (text: string): PublishedCheck[] => z.array(checkSchema).parse(parse(text));

export interface DataSet {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  readonly values: readonly number[];
}

/** All that is checked, by theme, with the data sets that statistics are held against. */
export interface Published {
  readonly themes: readonly { readonly id: string; readonly checks: readonly PublishedCheck[] }[];
  readonly sets: ReadonlyMap<string, DataSet>;
  /** Cases that were gathered and are held against nothing: id, and why. */
  readonly notCovered: Readonly<Record<string, string>>;
}

/** One row to work through: what is given in all, and what must come out. */
export interface Run {
  readonly given: Readonly<Record<string, string>>;
  readonly gives: Readonly<Record<string, string>>;
}

/** The rows of a check: its own, and those of its table. */
export const runsOf = ({ given, gives, runs = [] }: PublishedCheck): Run[] => [
  ...(gives ? [{ given, gives }] : []),
  ...runs.map((row) => ({ given: { ...given, ...row.given }, gives: row.gives })),
];
