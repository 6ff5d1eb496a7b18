import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { z } from 'zod';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';

/**
 * `read`: seen in a stored copy of the source named. `memory`: a well-known value, recalled. `recomputed`: worked out from the
 * equation named, independently of this project.
 */
const known = z.enum(['read', 'memory', 'recomputed']);

const texts = z.record(z.string(), z.coerce.string());
const run = z.strictObject({ given: texts.default({}), gives: texts });
const publishedCase = z.strictObject({
  id: z.string(),
  title: z.string(),
  source: z.string(),
  known,
  method: z.string(),
  given: texts.default({}),
  gives: texts.optional(),
  /** Several rows of one table: what each is given beside the rest, and what each gives. */
  runs: z.array(run).optional(),
  notes: z.string().optional(),
});

/** One row to work through: what the source states, and the printed result with half a unit of its last digit. */
export interface Row {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly method: string;
  readonly given: Record<string, string>;
  readonly gives: Record<string, string>;
}

const folder = new URL('./data/methods/', import.meta.url);

/** Every published case that a method of the handbook can be held against. */
export function methodCases(): Row[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .flatMap((name) => z.array(publishedCase).parse(parse(readFileSync(new URL(name, folder), 'utf8'))))
    .flatMap(({ id, title, source, method, given, gives, runs }) => [
      ...(gives ? [{ id, title, source, method, given, gives }] : []),
      ...(runs ?? []).map((row) => ({
        id,
        title,
        source,
        method,
        given: { ...given, ...row.given },
        gives: row.gives,
      })),
    ]);
}

/** The least and greatest value that a printed figure such as `3.61 A ±5 mA` stands for, in SI base units. */
export function printedRange(text: string): { min: number; max: number } {
  const { min, max } = parseQuantity(text);
  return { min, max };
}

/** Cases that nothing here is held against: id, and why. */
export const notCovered = (): Record<string, string> =>
  z
    .record(z.string(), z.string())
    .parse(parse(readFileSync(new URL('./data/not-covered.yaml', import.meta.url), 'utf8')));
