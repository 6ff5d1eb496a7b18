import { parseQuantity } from '../quantity/parse-quantity.ts';
import { TextError } from '../quantity/text-problem.ts';
import type { Input } from './board.ts';
import { factored } from './factored.ts';
import type { Report } from './report.ts';
import { meant } from './schema-problems.ts';
import type { Path } from './yaml-file.ts';

/** How measured values of one circuit go together. */
export interface Correlations {
  /** Ids of the inputs, in the order of rows and columns. */
  readonly of: readonly string[];
  /** Correlation coefficient of each two, 1 of each with itself. */
  readonly coefficients: readonly (readonly number[])[];
  /** Lower triangle L with L·Lᵀ = coefficients: it makes correlated numbers of independent ones. */
  readonly factor: readonly (readonly number[])[];
}

/**
 * The correlations of a circuit, `{ V with I: -0.36 }`; undefined where none are stated, or where they cannot be read and
 * the problem has been noted.
 * Source: JCGM 100:2008, 5.2.2 (correlation coefficient).
 */
export function readCorrelations(
  report: Report,
  circuit: string,
  stated: Record<string, string>,
  inputs: readonly Input[],
): Correlations | undefined {
  const path: Path = ['circuits', circuit, 'correlations'];
  const measured = new Map(
    inputs
      .filter(({ value }) => value.kind === 'part' && value.quantity.form === 'measured' && !value.tracks)
      .map((input) => [input.symbol, input.id]),
  );
  const before = report.problems.length;
  const pairs = Object.entries(stated).flatMap(([key, text]) => {
    const at: Path = [...path, key];
    const names = namesIn(report, at, key, measured);
    const coefficient = report.attempt(at, () => coefficientIn(text));
    return names && coefficient !== undefined ? [{ names, coefficient }] : [];
  });
  if (report.problems.length > before || !pairs.length) return undefined;
  const symbols = [...new Set(pairs.flatMap(({ names }) => names))];
  const coefficients = symbols.map((a) =>
    symbols.map((b) =>
      a === b ? 1 : (pairs.find(({ names }) => names.includes(a) && names.includes(b))?.coefficient ?? 0),
    ),
  );
  const factor = factored(coefficients);
  if (factor) return { of: symbols.map((symbol) => measured.get(symbol)!), coefficients, factor };
  report.add(path, {
    code: 'impossible-correlations',
    found: 'correlations that cannot all be true of the same values',
    expected: 'coefficients of one set of readings',
    hint: 'Two values that both follow a third closely must follow each other. Pairs left out count as 0.',
  });
  return undefined;
}

function namesIn(
  report: Report,
  at: Path,
  key: string,
  measured: ReadonlyMap<string, string>,
): readonly [string, string] | undefined {
  const match = /^(\S+)\s+with\s+(\S+)$/.exec(key);
  const [a, b] = [match?.[1], match?.[2]];
  if (a === undefined || b === undefined || a === b) {
    report.add(
      at,
      { code: 'not-a-correlation', found: `\`${key}\``, expected: 'two symbols of this circuit, such as `V with I`' },
      'key',
    );
    return undefined;
  }
  const unknown = [a, b].filter((symbol) => !measured.has(symbol));
  for (const symbol of unknown) {
    report.add(
      at,
      {
        code: 'cannot-correlate',
        found: `\`${symbol}\``,
        expected: 'a value of this circuit with a measured spread, such as `4.999 V sd 3.2 mV`',
        ...meant(symbol, [...measured.keys()]),
      },
      'key',
    );
  }
  return unknown.length ? undefined : [a, b];
}

function coefficientIn(text: string): number {
  const { typ, form, unit } = parseQuantity(text);
  if (form === 'number' && unit.text === '' && Math.abs(typ) <= 1) return typ;
  throw new TextError({
    code: 'not-a-coefficient',
    start: 0,
    end: text.length,
    found: `\`${text}\``,
    expected: 'a correlation coefficient from -1 to 1',
  });
}
