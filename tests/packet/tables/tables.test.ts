import { describe, expect, test } from 'vitest';
import type { Block, Table } from '../../../src/packet/block.ts';
import { packetFiles } from '../../../src/packet/files.ts';
import type { Packet } from '../../../src/packet/packet.ts';
import { packetOf } from '../../../src/packet/packet-of.ts';
import { divider, reviewed } from '../packets.ts';

const spec = divider(
  '12.7 kohm',
  `    plots: [ { of: V_out, over: V_in, limit: full_scale } ]
requirements:
  REQ-1: { says: "=cmd|' /C calc'!A0 shall not run", shown by: [sense.full_scale] }
actions:
  A-1: { says: "+1 board to be measured, before release", who: test, due: 2026-05-01 }
`,
);
const { board, findings } = reviewed(spec);
const packet = packetOf(board, findings);
const files = packetFiles(board, findings, packet);

/** The records of a CSV file, read after RFC 4180. */
function records(text: string): string[][] {
  const rows: string[][] = [[]];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!;
    if (quoted) {
      if (c !== '"') cell += c;
      else if (text[i + 1] === '"') cell += text[i++];
      else quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === ',' || c === '\r') {
      rows.at(-1)!.push(cell);
      cell = '';
      if (c === '\r') {
        expect(text[++i]).toBe('\n');
        rows.push([]);
      }
    } else cell += c;
  }
  expect(rows.pop()).toEqual([]);
  return rows;
}

const table = (name: string): Record<string, string>[] => {
  const [head, ...rows] = records(files[name]!) as [string[], ...string[][]];
  return rows.map((row) => Object.fromEntries(row.map((value, i) => [head[i]!, value])));
};

const blocksOf = (one: Packet): Block[] =>
  one.chapters.flatMap(({ blocks, sections }) => [...blocks, ...sections.flatMap((section) => section.blocks)]);

describe('files beside a packet', () => {
  test('each CSV reads back with rows of one width, and no cell that a spreadsheet would run', () => {
    const names = Object.keys(files).filter((name) => name.endsWith('.csv'));
    expect(names.length).toBeGreaterThan(12);
    for (const name of names) {
      const rows = records(files[name]!);
      expect(new Set(rows.map(({ length }) => length)).size, name).toBe(1);
      for (const cell of rows.flat()) expect(cell, name).not.toMatch(/^[=+@\t]|^-(?![\d.])/);
    }
  });
  test('every table of the packet has a file that holds as many rows', () => {
    const elsewhere: Record<string, [file: string, rows: number]> = {
      'thinnest-margins': ['margins.csv', 2],
      'margin-table': ['margins.csv', 2],
      corners: ['corners.csv', 9],
      'parts-list': ['parts.csv', 3],
      'three-methods': ['results.csv', 3],
      contributions: ['sensitivity.csv', 9],
    };
    const tables = blocksOf(packet).filter((block): block is Table => block.kind === 'table');
    // A sheet of test points also holds its hold line; test-points.csv holds the points of all sheets.
    for (const { id, groups } of tables.filter((one) => !/^(inputs|checks|validity|test-points)-/.test(one.id))) {
      const rows = groups.reduce((sum, group) => sum + group.rows.length, 0);
      const [file, least] = elsewhere[id] ?? [`${id}.csv`, rows];
      expect(table(file).length, id).toBeGreaterThanOrEqual(Math.min(least, rows));
    }
    expect(table('test-points.csv').map(({ point }) => point)).toEqual(findings.test_points.map(({ id }) => id));
  });
  test('numbers are those of results.json, at full precision', () => {
    const margin = table('margins.csv').find(({ check }) => check === 'sense.full_scale')!;
    const check = findings.checks.find(({ id }) => id === 'sense.full_scale')!;
    expect(Number(margin['worst slack'])).toBe(check.worst_slack);
    expect(margin.at).toContain('V_pack=42');
    const result = table('results.csv').find((row) => row.result === 'sense.V_out')!;
    expect(Number(result['worst max'])).toBe(findings.results['sense.V_out']!.worst.max);
    expect(Number(result['50 %'])).toBe(findings.results['sense.V_out']!.spread!.quantiles['0.5']);
    const points = table('sweeps.csv').map(({ x, 'worst max': max }) => [Number(x), Number(max)]);
    expect(points).toEqual(findings.sweeps.flatMap(({ runs }) => runs.flat().map(({ x, max }) => [x, max])));
    expect(points.length).toBeGreaterThan(3);
  });
  test('an input names its origin and everything that uses it', () => {
    expect(table('inputs.csv').find(({ input }) => input === 'sense.R_top')).toMatchObject({
      designator: 'R1',
      origin: 'data sheet, p. 3',
      basis: 'guaranteed',
      'used in': expect.stringContaining('sense.P_top'),
    });
  });
  test('printed tables keep their words: symbols as typed, minus signs of a keyboard', () => {
    expect(table('requirements.csv')[0]).toMatchObject({
      requirement: 'REQ-1',
      says: expect.stringMatching(/^'=cmd/),
    });
    expect(table('conditions.csv')[1]).toMatchObject({ Symbol: 'T_amb', min: '-10', max: '45', unit: '°C' });
  });
});
