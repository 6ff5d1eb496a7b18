import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { loadHandbook } from '../../src/site/handbook-files.ts';
import { work } from './work.ts';

const methods = [...loadHandbook().methods.values()];

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

  test('every symbol is used, and a usual value says where it comes from', () => {
    const texts = [
      ...Object.values(method.equations ?? {}).map(({ is }) => is),
      ...[...Object.values(method.checks ?? {}), ...Object.values(method.valid ?? {})].map(({ holds }) => holds),
      ...Object.values(method.firmware ?? {}).map(({ is }) => is),
    ].join(' ; ');
    const words = new Set(texts.match(/[A-Za-z_][A-Za-z0-9_]*/g));
    for (const [symbol, { usual, from }] of Object.entries(method.symbols)) {
      expect(words, `${symbol} stands in no equation`).toContain(symbol);
      if (usual !== undefined) expect(from, `origin of the usual ${symbol}`).toBeDefined();
    }
  });
});
