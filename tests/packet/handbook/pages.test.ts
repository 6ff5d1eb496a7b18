import { describe, expect, test } from 'vitest';
import { maths } from '../../../src/components/maths.ts';
import type { Block, Equation, Table } from '../../../src/packet/block.ts';
import { printedValue } from '../../../src/packet/figures.ts';
import { type HandbookPage, overview } from '../../../src/packet/handbook/page.ts';
import { handbookPages } from '../../../src/packet/handbook/pages.ts';
import { parseQuantity } from '../../../src/quantity/parse-quantity.ts';
import { loadPublished } from '../../../src/site/published-files.ts';
import { loadSafety } from '../../../src/site/safety-files.ts';
import { handbook } from '../../handbook.ts';
import { inlinesOf, leavesOf, rowsOf } from '../walk.ts';

const pages = handbookPages(handbook, loadSafety(), loadPublished());
const methods = [...handbook.methods.values()];
const named = (id: string): HandbookPage => pages.find((page) => page.id === id)!;
const blocks = ({ sections }: HandbookPage): Block[] => sections.flatMap((section) => section.blocks);
const equations = (page: HandbookPage): Equation[] => blocks(page).filter((block) => block.kind === 'equation');
const tables = (page: HandbookPage): Table[] => blocks(page).filter((block) => block.kind === 'table');

function anchors(page: HandbookPage): string[] {
  const rows = tables(page).flatMap(({ groups }) =>
    groups.flatMap((group) => group.rows.flatMap(({ id }) => id ?? [])),
  );
  return [
    ...page.sections.map(({ id }) => id),
    ...tables(page).map(({ id }) => id),
    ...equations(page).map(({ id }) => id),
    ...rows,
  ];
}

test('there is a page for every method, and one for each table over all of them', () => {
  expect(pages.map(({ id }) => id)).toEqual([...overview, ...methods.map(({ id }) => id)]);
});

describe.each(pages)('$id', (page) => {
  test('says nothing that only a fault prints', () => {
    for (const { path, leaf } of leavesOf(page)) {
      expect(leaf, path).not.toBeNull();
      if (typeof leaf === 'string')
        expect(leaf, path).not.toMatch(/\b(NaN|undefined|null|Infinity)\b|\[object|\bit\.[A-Za-z_]/);
      if (typeof leaf === 'number') expect(Number.isFinite(leaf), path).toBe(true);
    }
  });

  test('has each anchor once, and every link leads somewhere', () => {
    const own = anchors(page);
    expect(own.length).toBe(new Set(own).size);
    const known = new Set(own);
    for (const inline of inlinesOf(page)) {
      if (inline.kind !== 'link') continue;
      const [, id, anchor] = /^\/handbook\/([^#]*)#?(.*)$/.exec(inline.to) ?? [];
      if (id === undefined) expect(known, inline.to).toContain(inline.to);
      else if (anchor) expect(anchors(named(id)), inline.to).toContain(anchor);
      else expect(named(id), inline.to).toBeDefined();
    }
  });

  test('has cells for every column, and formulas that can be set', () => {
    for (const { columns, groups } of tables(page))
      for (const row of groups.flatMap(({ rows }) => rows)) expect(row.cells.length).toBe(columns.length);
    for (const inline of inlinesOf(page)) if (inline.kind === 'math') expect(maths(inline.tex)).toContain('<math');
    for (const { left, lines } of equations(page))
      for (const tex of [left, ...lines.flatMap(({ terms }) => terms)]) expect(maths(`{}${tex}`)).toContain('<math');
  });
});

describe.each(methods)('the page of $id', (method) => {
  const page = named(method.id);

  test('has every equation as symbols and with the numbers of the example, and its source', () => {
    const shown = equations(page);
    expect(shown.map(({ id }) => id)).toEqual(Object.keys(method.equations ?? {}));
    for (const { id, lines, notes } of shown) {
      expect(lines.map(({ label }) => label)).toEqual(['symbols', 'example']);
      const source = method.sources[method.equations![id]!.source!]!;
      expect(notes[0]?.join('').toLowerCase()).toContain(source.toLowerCase().replace(/[.\s]+$/, ''));
    }
  });

  test('comes to what its example says', () => {
    const shown = new Map(equations(page).map(({ id, lines }) => [id, lines[1]!.result!]));
    for (const [symbol, text] of Object.entries(method.example.gives)) {
      const figure = shown.get(symbol);
      if (!figure) continue;
      const { typ } = parseQuantity(text);
      expect(Math.abs(printedValue(figure) - typ), symbol).toBeLessThanOrEqual(6e-4 * Math.abs(typ));
    }
  });

  test('has a line for every symbol, check, constant and source', () => {
    const rows = tables(page).flatMap(rowsOf).join('\n');
    for (const { says } of Object.values(method.symbols)) expect(rows).toContain(says);
    for (const name of Object.keys({ ...method.checks, ...method.valid, ...method.firmware }))
      expect(rows).toContain(name);
    for (const source of Object.values(method.sources)) expect(rows).toContain(source);
  });
});

test.each(methods.filter(({ drawing }) => drawing))(
  'the page of $id has its drawing, with the numbers of the example',
  ({ id, drawing }) => {
    const found = blocks(named(id)).find((block) => block.kind === 'drawing')!;
    expect(found.parts.length).toBe(drawing!.parts.length);
    expect(found.alt.length).toBeGreaterThan(20);
  },
);

test('a page says which cautions look at its numbers', () => {
  const rows = tables(named('bleeder')).find(({ id }) => id === 'table-cautions')!;
  expect(rowsOf(rows)).toEqual(['S06 | CAUTION | Voltage that lingers | t_5, R_bl, t_60']);
});

test('the index of symbols leads to every symbol of every method', () => {
  const links = new Set(inlinesOf(named('symbols')).flatMap((inline) => (inline.kind === 'link' ? [inline.to] : [])));
  for (const { id, symbols, equations: found = {} } of methods)
    for (const symbol of [...Object.keys(symbols), ...Object.keys(found)])
      expect(links).toContain(`/handbook/${id}#${symbol}`);
});

test('published checks are all inside what is allowed, and say how each is known', () => {
  const page = named('published');
  expect(page.lead.join('')).toMatch(/^\d+ figures .* All lie inside what is allowed\.$/);
  const titles = tables(page).flatMap(({ groups }) => groups.flatMap(({ title }) => title ?? []));
  for (const title of titles) expect(title).toMatch(/\((read|from memory|recomputed|common practice)\)/);
});
