import { expect, test } from 'vitest';
import type { Block } from '../../src/packet/block.ts';
import type { Section } from '../../src/packet/packet.ts';
import { sectionGroups } from '../../src/site/section-groups.ts';

/** A section with so many equations, of which a page holds about seven. */
const withEquations = (id: string, count: number): Section => ({
  id,
  number: id,
  title: id,
  aside: [],
  blocks: Array.from(
    { length: count },
    (): Block => ({ kind: 'equation', id: 'x.y', number: '7.1', intro: [], left: 'y', lines: [], notes: [] }),
  ),
});
const groupsOf = (lengths: readonly number[]): string[][] =>
  sectionGroups({ sections: lengths.map((count, i) => withEquations(`7.${i + 1}`, count)) }).map((group) =>
    group.map(({ number }) => number),
  );

test('short sections share pages, in their order, each in one group', () => {
  expect(groupsOf([2, 2, 3, 1])).toEqual([['7.1', '7.2', '7.3', '7.4']]);
  expect(groupsOf([]).flat()).toEqual([]);
});

test('a group ends when about ten pages are full, so that its running head stands for a few sections only', () => {
  const groups = groupsOf(Array.from({ length: 24 }, () => 30));
  expect(groups.flat()).toEqual(Array.from({ length: 24 }, (_, i) => `7.${i + 1}`));
  for (const group of groups) expect(group.length).toBeLessThanOrEqual(3);
  expect(groups.length).toBeLessThan(24);
});

test('one long section is a group of its own', () => {
  expect(groupsOf([90, 90])).toEqual([['7.1'], ['7.2']]);
});
