import { expect } from 'vitest';
import { maths } from '../../src/components/maths.ts';
import type { Packet } from '../../src/packet/packet.ts';
import { anchorIds, blocksOf, inlinesOf, leavesOf, tablesOf, targetsOf } from './walk.ts';

/** What holds for the packet of any board, whatever it says. */
export function expectSound(packet: Packet): void {
  expect(unprintable(packet)).toEqual([]);
  const anchors = anchorIds(packet);
  expect(anchors.filter((id, i) => anchors.indexOf(id) !== i)).toEqual([]);
  const there = new Set(anchors);
  expect([...new Set(targetsOf(packet))].filter((id) => !there.has(id) && !id.startsWith('https://'))).toEqual([]);
  expect(raggedTables(packet)).toEqual([]);
  expect(refusedFormulas(packet)).toEqual([]);
  expect(outOfOrder(packet)).toEqual([]);
}

/** Words that only a bug prints, texts of nothing, numbers that are none, and figures with more digits than are known. */
function unprintable(packet: Packet): string[] {
  const faults = leavesOf(packet).filter(({ path, leaf }) => {
    if (typeof leaf === 'number') return Number.isNaN(leaf) || (!Number.isFinite(leaf) && !/\.room\.[01]$/.test(path));
    if (typeof leaf !== 'string') return leaf === undefined || leaf === null;
    if (/\b(NaN|undefined|null|Infinity|\[object)/.test(leaf)) return true;
    if (leaf.trim() === '' && !/\.unit$|^purpose$/.test(path) && !isSpacer(path, leaf)) return true;
    return significant(leaf) > 6 || /\de[+-]?\d/.test(leaf);
  });
  const hollow = blocksOf(packet).filter((block) => 'text' in block && block.text.length === 0);
  return [
    ...faults.map(({ path, leaf }) => `${path}: ${JSON.stringify(leaf)}`),
    ...hollow.map(({ kind }) => `empty ${kind}`),
  ];
}

/** Digits of the longest number with a decimal point in it. */
const significant = (text: string): number =>
  Math.max(0, ...(text.match(/\d+\.\d+/g) ?? []).map((number) => number.replace('.', '').replace(/^0+/, '').length));

/** A space between two marked pieces. */
const isSpacer = (path: string, leaf: string): boolean => leaf === ' ' && /\.\d+$/.test(path);

/** Rows with more or fewer cells than the table has columns, and numbers set as words in a column of numbers. */
function raggedTables(packet: Packet): string[] {
  return tablesOf(packet).flatMap(({ id, columns, groups }) =>
    groups.flatMap(({ rows }) =>
      rows.flatMap(({ cells }) => [
        ...(cells.length === columns.length ? [] : [`${id}: ${cells.length} cells in ${columns.length} columns`]),
        ...cells.flatMap((cell, i) =>
          Array.isArray(cell) && cell.length === 0 && columns[i]!.align !== 'blank' ? [`${id}: an empty cell`] : [],
        ),
      ]),
    ),
  );
}

function refusedFormulas(packet: Packet): string[] {
  const equations = blocksOf(packet).flatMap((block) =>
    block.kind === 'equation' ? [block.left, ...block.lines.flatMap(({ terms }) => terms)] : [],
  );
  const inText = inlinesOf(packet).flatMap((piece) => (piece.kind === 'math' ? [piece.tex] : []));
  return [...new Set([...equations.map((tex) => `{}${tex}`), ...inText])].flatMap((tex) => {
    try {
      maths(tex);
      return [];
    } catch (error) {
      return [(error as Error).message];
    }
  });
}

/** Chapters, sections, tables and figures are numbered upward; a number is used once. */
function outOfOrder({ chapters }: Packet): string[] {
  const rising = (numbers: readonly string[]): boolean =>
    numbers.every((number, i) => i === 0 || number.localeCompare(numbers[i - 1]!, 'en', { numeric: true }) > 0);
  return chapters.flatMap(({ number, slug, blocks, sections }) => {
    const all = [...blocks, ...sections.flatMap((section) => section.blocks)];
    const lists = {
      sections: sections.map((section) => section.number),
      tables: all.flatMap((block) => (block.kind === 'table' ? [block.number] : [])),
      figures: all.flatMap((block) =>
        block.kind === 'figure' || block.kind === 'drawing' || block.kind === 'exchange' ? [block.number] : [],
      ),
      equations: all.flatMap((block) => (block.kind === 'equation' ? [block.number] : [])),
    };
    return Object.entries(lists).flatMap(([what, numbers]) =>
      rising(numbers) && numbers.every((one) => one.startsWith(`${number}.`))
        ? []
        : [`${slug} ${what}: ${numbers.join(' ')}`],
    );
  });
}
