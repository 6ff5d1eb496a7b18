import { show } from '../expression/show.ts';
import type { Tree } from '../expression/tree.ts';
import { type Dimension, pureNumber } from '../quantity/dimension.ts';
import { TextError } from '../quantity/text-problem.ts';
import type { Report } from '../spec/report.ts';
import { meant } from '../spec/schema-problems.ts';
import type { Path } from '../spec/yaml-file.ts';
import { blanksIn } from './blanks.ts';
import { treeOf } from './read-quantity.ts';
import type { CautionRule, HazardQuantity, Words } from './safety-data.ts';
import type { CautionEntry } from './safety-schema.ts';

interface Tables {
  readonly quantities: ReadonlyMap<string, HazardQuantity>;
  isFlag(name: string): boolean;
  readonly places: Readonly<Record<string, string>>;
  readonly reminders: Readonly<Record<string, string>>;
  readonly sources: Readonly<Record<string, string>>;
}

/** Word in place of a trigger for what is always shown. */
const ALWAYS = 'always';

/** One caution; undefined where its problems have been noted. */
export function readCaution(
  report: Report,
  path: Path,
  id: string,
  entry: CautionEntry,
  tables: Tables,
): CautionRule | undefined {
  const lookup = (name: string): Dimension | undefined =>
    tables.quantities.get(name)?.unit.dimension ?? (tables.isFlag(name) ? pureNumber : undefined);
  const trigger =
    entry.trigger === ALWAYS
      ? undefined
      : report.attempt([...path, 'trigger'], () => quantitiesFirst(treeOf(entry.trigger, tables, lookup, 'truth')));
  if (entry.trigger !== ALWAYS && !trigger) return undefined;
  requireKeys(report, [...path, 'at'], entry.at, tables.places);
  requireKeys(report, [...path, 'reminders'], entry.reminders, tables.reminders);
  entry.sources.forEach(({ from, known }, i) => {
    if (from !== undefined) requireKeys(report, [...path, 'sources', i, 'from'], [from], tables.sources);
    else if (known === 'read' || known === 'memory')
      report.add([...path, 'sources', i], {
        code: 'missing-key',
        found: `a source that was ${known === 'read' ? 'read' : 'recalled'} without its name`,
        expected: 'the key `from`',
      });
  });
  const words: Words = { text: entry.text, precaution: entry.precaution };
  const ifEndless = defined(entry['if endless']);
  const ifUnknown = defined(entry['if unknown']);
  requireBlanks(report, path, words, tables.quantities);
  requireBlanks(report, [...path, 'if endless'], ifEndless, tables.quantities);
  requireBlanks(report, [...path, 'if unknown'], ifUnknown, tables.quantities);
  return {
    id,
    level: entry.level,
    hazard: entry.hazard,
    words,
    ifEndless,
    ifUnknown,
    at: entry.at,
    sources: entry.sources,
    reminders: entry.reminders,
    mayBeDismissed: entry['may be dismissed'] !== 'no',
    ...(trigger ? { trigger } : {}),
  };
}

function defined(words: { text?: string | undefined; precaution?: string | undefined } = {}): Partial<Words> {
  return { ...(words.text ? { text: words.text } : {}), ...(words.precaution ? { precaution: words.precaution } : {}) };
}

function requireKeys(
  report: Report,
  path: Path,
  keys: readonly string[],
  table: Readonly<Record<string, string>>,
): void {
  keys.forEach((key, i) => {
    if (Object.hasOwn(table, key)) return;
    report.add(keys.length > 1 || path.at(-1) !== 'from' ? [...path, i] : path, {
      code: 'unknown-name',
      found: `\`${key}\``,
      expected: 'a key of its table',
      ...meant(key, Object.keys(table)),
    });
  });
}

function requireBlanks(
  report: Report,
  path: Path,
  words: Partial<Words>,
  quantities: ReadonlyMap<string, HazardQuantity>,
): void {
  for (const [key, text] of Object.entries(words)) {
    for (const name of blanksIn(text)) {
      if (!quantities.has(name))
        report.add([...path, key], {
          code: 'unknown-name',
          found: `the blank \`{${name}}\``,
          expected: 'a hazard quantity',
          ...meant(name, quantities.keys()),
        });
    }
  }
}

const JOINING = new Set(['and', 'or', 'not']);

/** The tree, if the left side of each comparison is a name by itself: that is the number which the packet prints. */
function quantitiesFirst(tree: Tree): Tree {
  if (tree.kind !== 'call') return tree;
  if (JOINING.has(tree.operation)) tree.args.forEach(quantitiesFirst);
  else if (tree.args[0]!.kind !== 'symbol')
    throw new TextError({
      code: 'not-a-name',
      ...tree.args[0]!.at,
      found: `\`${show(tree.args[0]!)}\` on the left of a comparison`,
      expected: 'a hazard quantity by itself',
    });
  return tree;
}
