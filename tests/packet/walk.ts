import { anchorsOf } from '../../src/packet/anchors.ts';
import type { Block, Cell, Equation, Row, Table } from '../../src/packet/block.ts';
import type { Chapter, Packet, Section } from '../../src/packet/packet.ts';
import type { Inline, Text } from '../../src/packet/text.ts';

/** Every string and number of a packet with the way to it, such as `chapters.3.blocks.0.text.1`. */
export function leavesOf(value: unknown, path = ''): { path: string; leaf: unknown }[] {
  if (typeof value !== 'object' || value === null) return [{ path, leaf: value }];
  return Object.entries(value).flatMap(([key, one]) => leavesOf(one, path ? `${path}.${key}` : key));
}

/** Every marked piece of running text. */
export function inlinesOf(value: unknown): Exclude<Inline, string>[] {
  if (typeof value !== 'object' || value === null) return [];
  const kinds = ['math', 'strong', 'em', 'name', 'link', 'page', 'verdict'];
  const own = 'kind' in value && kinds.includes(String(value.kind)) ? [value as Exclude<Inline, string>] : [];
  return [...own, ...Object.values(value).flatMap(inlinesOf)];
}

/** Anchors that something refers to. */
export const targetsOf = (packet: Packet): string[] =>
  inlinesOf(packet).flatMap((piece) => (piece.kind === 'link' ? [piece.to] : piece.kind === 'page' ? [piece.of] : []));

export const anchorIds = (packet: Packet): string[] => anchorsOf(packet).map(({ id }) => id);

export const blocksOf = ({ chapters }: Packet): Block[] =>
  chapters.flatMap(({ blocks, sections }) => [...blocks, ...sections.flatMap((section) => section.blocks)]);
export const tablesOf = (packet: Packet): Table[] => blocksOf(packet).filter((block) => block.kind === 'table');
export const equationsOf = (packet: Packet): Equation[] =>
  blocksOf(packet).filter((block) => block.kind === 'equation');

export function chapterNamed({ chapters }: Packet, slug: string): Chapter {
  const found = chapters.find((chapter) => chapter.slug === slug);
  if (!found)
    throw new Error(`The packet has no chapter ${slug}; it has ${chapters.map((one) => one.slug).join(', ')}.`);
  return found;
}

export function sectionNamed(packet: Packet, id: string): Section {
  const found = packet.chapters.flatMap(({ sections }) => sections).find((section) => section.id === id);
  if (!found) throw new Error(`The packet has no section ${id}.`);
  return found;
}

export function tableNamed(packet: Packet, id: string): Table {
  const found = tablesOf(packet).find((table) => table.id === id);
  if (!found)
    throw new Error(
      `The packet has no table ${id}; it has ${tablesOf(packet)
        .map((one) => one.id)
        .join(', ')}.`,
    );
  return found;
}

export function equationNamed(packet: Packet, id: string): Equation {
  const found = equationsOf(packet).find((equation) => equation.id === id);
  if (!found) throw new Error(`The packet has no equation ${id}.`);
  return found;
}

/** A text as a reader without the layout would say it; formulas stand between dollars, verdicts in angles. */
export const said = (text: Text): string =>
  text
    .map((piece) => {
      if (typeof piece === 'string') return piece;
      if (piece.kind === 'math') return `$${piece.tex}$`;
      if (piece.kind === 'page') return `[${piece.of}]`;
      if (piece.kind === 'verdict') return `<${piece.verdict}${piece.deviation ? ` ${piece.deviation}` : ''}>`;
      return piece.text;
    })
    .join('')
    .replaceAll('\u00a0', ' ');

export const cellText = (cell: Cell): string =>
  'strip' in cell ? '(strip)' : 'number' in cell ? `${cell.number}${cell.unit ? ` ${cell.unit}` : ''}` : said(cell);

/** A table's rows in words, cells parted by ` | `; group titles stand alone. */
export const rowsOf = ({ groups }: Table): string[] =>
  groups.flatMap(({ title, rows }) => [...(title ? [title.replaceAll('\u00a0', ' ')] : []), ...rows.map(rowText)]);

export const rowText = ({ cells }: Row): string => cells.map(cellText).join(' | ');

export const equationText = ({ left, lines }: Equation): string[] =>
  lines.map(({ label, terms, result }) =>
    [`${label}: ${left} = ${terms.join(' ')}`, ...(result ? [`= ${result.number} ${result.unit}`.trim()] : [])].join(
      ' ',
    ),
  );
