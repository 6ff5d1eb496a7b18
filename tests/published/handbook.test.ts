import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { find } from '../../src/analysis/find.ts';
import type { Findings } from '../../src/analysis/findings.ts';
import { isPure } from '../../src/quantity/dimension.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { loadHandbook } from '../../src/site/handbook-files.ts';
import type { Method } from '../../src/spec/method-schema.ts';
import { showProblems } from '../../src/spec/problem.ts';
import { readSpec } from '../../src/spec/read-spec.ts';
import { work } from './work.ts';

const book = loadHandbook();
const methods = [...book.methods.values()];

/** Findings about a board that is one method with its example's values, those that are not counted spread by `share`. */
function findings(method: Method, share: number): Findings {
  const given = Object.entries(method.example.given).map(([symbol, text]) => [symbol, spread(text, share)]);
  const spec = {
    board: method.title.slice(0, 40),
    document: 'E-1',
    revision: 'A',
    issued: '2026-01-01',
    status: 'draft',
    purpose: method.sizes,
    margins: { derating: 'ecss' },
    circuits: { it: { method: method.id, given: Object.fromEntries(given) } },
  };
  const source = { file: `${method.id}.yaml`, board: 'example', revision: 'a' };
  const { board, problems } = readSpec(stringify(spec), source, book);
  if (!board) throw new Error(showProblems(problems));
  return find(board, { seed: 1, trials: 200, digest: '', tool: 'test' });
}

/** Counts, temperatures, zeros and shares stay as they are. */
function spread(text: string, share: number): string {
  const { form, typ, unit } = parseQuantity(text);
  const steady = form !== 'number' || typ === 0 || unit.offset !== 0 || isPure(unit.dimension);
  return steady ? text : `${text} ±${100 * share} %`;
}

describe.each(methods)('$place/$id', (method) => {
  test('its worked example comes out, to the figures printed', () => {
    const value = work(method.id, {});
    const printed = Object.entries(method.example.gives);
    expect(printed.length).toBeGreaterThan(0);
    for (const [symbol, text] of printed) {
      const { typ } = parseQuantity(text);
      expect(Math.abs(value(symbol) - typ), `${symbol}, printed ${text}`).toBeLessThanOrEqual(5e-5 * Math.abs(typ));
    }
  });

  test('every equation names a source of the page, and every source is used', () => {
    const named = new Set<string>();
    for (const [symbol, { source }] of Object.entries(method.equations ?? {})) {
      expect(Object.keys(method.sources), `source of ${symbol}`).toContain(source);
      if (source) named.add(source);
    }
    expect([...named].sort()).toEqual(Object.keys(method.sources).sort());
  });

  test('checks and lines of validity have names of their own, for they share one anchor', () => {
    const valid = Object.keys(method.valid ?? {});
    expect(Object.keys(method.checks ?? {}).filter((name) => valid.includes(name))).toEqual([]);
  });

  test('is written in characters that the printed faces have', () => {
    // A drawing is not set in these faces.
    const outside = JSON.stringify({ ...method, drawing: undefined }).match(
      /[^\x20-\x7e\u00a0-\u00ff\u0370-\u03ff√⁴⁵–]/g,
    );
    expect(outside).toBeNull();
  });

  test('every symbol is used, and a usual value says where it comes from', () => {
    const texts = [
      ...Object.values(method.equations ?? {}).map(({ is }) => is),
      ...[...Object.values(method.checks ?? {}), ...Object.values(method.valid ?? {})].map(({ holds }) => holds),
      ...Object.values(method.firmware ?? {}).map(({ is }) => is),
      ...Object.values(method.symbols).map(({ usual }) => usual ?? ''),
    ].join(' ; ');
    const words = new Set(texts.match(/[A-Za-z_][A-Za-z0-9_]*/g));
    for (const [symbol, { usual, from }] of Object.entries(method.symbols)) {
      expect(words, `${symbol} stands in no equation`).toContain(symbol);
      if (usual !== undefined) expect(from, `origin of the usual ${symbol}`).toBeDefined();
    }
  });

  test('with two per cent on every value it stays finite, and nominal lies inside the worst case', () => {
    const { results, checks, validity } = findings(method, 0.02);
    for (const [id, { nominal, worst }] of Object.entries(results)) {
      const room = 1e-9 * (Math.abs(worst.min_bound) + Math.abs(worst.max_bound));
      expect(Number.isFinite(nominal) && Number.isFinite(worst.min) && Number.isFinite(worst.max), id).toBe(true);
      expect(worst.min_bound, id).toBeLessThanOrEqual(nominal + room);
      expect(worst.max_bound, id).toBeGreaterThanOrEqual(nominal - room);
    }
    for (const { id, verdict, worst_slack } of [...checks, ...validity]) {
      expect(verdict, id).not.toBe('not assessed');
      expect(Number.isFinite(worst_slack), id).toBe(true);
    }
  });
});
