import { ordered } from '../spec/order.ts';
import type { Problem } from '../spec/problem.ts';
import { Report } from '../spec/report.ts';
import { schemaProblems } from '../spec/schema-problems.ts';
import { type Path, readYaml } from '../spec/yaml-file.ts';
import { namesIn } from './names-in.ts';
import { readCaution } from './read-caution.ts';
import { readQuantity } from './read-quantity.ts';
import type { CautionRule, HazardFlag, HazardQuantity, SafetyData } from './safety-data.ts';
import { type SafetyFile, safetyFileSchema } from './safety-schema.ts';

export interface SafetyText {
  /** Shown in messages. */
  readonly file: string;
  readonly text: string;
}

/** A file that was read, with the way back to its places. */
interface Sheet {
  readonly report: Report;
  readonly data: SafetyFile;
}

/**
 * The safety cautions and their tables from the texts of their files, or every problem that keeps them from being sound:
 * names that are not known, equations and triggers whose units disagree, loops, blanks that nothing fills. Pure.
 * The data is there exactly when no problem is.
 */
export function readSafety(texts: readonly SafetyText[]): { data?: SafetyData; problems: readonly Problem[] } {
  const sheets: Sheet[] = [];
  const problems: Problem[] = [];
  for (const { file, text } of texts) {
    const yaml = readYaml(text, file);
    const parsed = safetyFileSchema.safeParse(yaml.data ?? {});
    if (yaml.problems.length) problems.push(...yaml.problems);
    else if (!parsed.success)
      problems.push(...schemaProblems(yaml, parsed.error.issues, () => Object.keys(safetyFileSchema.shape)));
    else sheets.push({ report: new Report(yaml), data: parsed.data });
  }
  if (problems.length) return { problems };
  const data = assembled(sheets);
  const found = sheets.flatMap(({ report }) => report.problems);
  return found.length ? { problems: found } : { data, problems: [] };
}

type Table = keyof SafetyFile;

/** Rows of one table over all files, each with its sheet; a key that stands twice is a problem. */
function rows<T extends Table>(sheets: readonly Sheet[], table: T) {
  type Entry = NonNullable<SafetyFile[T]>[string];
  const seen = new Map<string, { sheet: Sheet; entry: Entry; path: Path }>();
  for (const sheet of sheets) {
    for (const [key, entry] of Object.entries(sheet.data[table] ?? {}) as [string, Entry][]) {
      const path: Path = [table, key];
      if (seen.has(key))
        sheet.report.add(
          path,
          { code: 'stands-twice', found: `\`${key}\` a second time`, expected: 'each once' },
          'key',
        );
      else seen.set(key, { sheet, entry, path });
    }
  }
  return seen;
}

function assembled(sheets: readonly Sheet[]): SafetyData {
  const flagRows = rows(sheets, 'flags');
  const quantityRows = rows(sheets, 'quantities');
  const isFlag = (name: string) => flagRows.has(name);
  const read = new Map<string, HazardQuantity>();
  for (const [symbol, { sheet, entry, path }] of quantityRows) {
    const quantity = readQuantity(sheet.report, path, symbol, entry, { isFlag, quantities: quantityRows });
    if (quantity) read.set(symbol, quantity);
  }
  const complete = sheets.every(({ report }) => report.problems.length === 0);
  const quantities = complete ? inOrder(read, quantityRows) : read;
  const tags = new Set([...quantities.values()].map(({ tag }) => tag));
  const flags = new Map<string, HazardFlag>();
  for (const [symbol, { sheet, entry, path }] of flagRows) {
    const provenBy = entry['yes if given'] ?? [];
    for (const [i, name] of provenBy.entries())
      if (!tags.has(name)) sheet.report.add([...path, 'yes if given', i], unknownName(name));
    if (quantities.has(symbol))
      sheet.report.add(
        path,
        { code: 'stands-twice', found: `\`${symbol}\` as a quantity too`, expected: 'one or the other' },
        'key',
      );
    flags.set(symbol, { symbol, yes: entry.yes, no: entry.no, provenBy });
  }
  const tables = {
    places: table(sheets, 'places'),
    reminders: table(sheets, 'reminders'),
    sources: table(sheets, 'sources'),
  };
  const cautions: CautionRule[] = [];
  for (const [id, { sheet, entry, path }] of rows(sheets, 'cautions')) {
    const rule = readCaution(sheet.report, path, id, entry, { ...tables, quantities, isFlag });
    if (rule) cautions.push(rule);
  }
  cautions.sort((a, b) => (a.id < b.id ? -1 : 1));
  return { cautions, quantities, flags, ...tables };
}

function table(sheets: readonly Sheet[], name: 'places' | 'reminders' | 'sources'): Record<string, string> {
  return Object.fromEntries([...rows(sheets, name)].map(([key, { entry }]) => [key, entry]));
}

/** Each quantity after those it is worked out from. */
function inOrder(
  read: ReadonlyMap<string, HazardQuantity>,
  from: ReadonlyMap<string, { sheet: Sheet; path: Path }>,
): ReadonlyMap<string, HazardQuantity> {
  const needs = (symbol: string) => {
    const { equals, zeroWhen, infiniteWhen } = read.get(symbol)!;
    return [equals, zeroWhen, infiniteWhen]
      .flatMap((tree) => (tree ? [...namesIn(tree)] : []))
      .filter((name) => read.has(name));
  };
  const { order, loops } = ordered(read.keys(), needs);
  for (const loop of loops) {
    const { sheet, path } = from.get(loop[0]!)!;
    sheet.report.add(path, {
      code: 'loop',
      found: `a loop: ${[...loop, loop[0]!].join(' → ')}`,
      expected: 'equations that can be worked out one after another',
    });
  }
  return new Map(order.map((symbol) => [symbol, read.get(symbol)!]));
}

const unknownName = (name: string) => ({
  code: 'unknown-name',
  found: `the name \`${name}\``,
  expected: 'a hazard quantity or a fact of the tables',
});
