import { describe, expect, test } from 'vitest';
import { judged } from '../../src/published/judge.ts';
import { loadPublished } from '../../src/site/published-files.ts';
import { handbook } from '../handbook.ts';

const published = loadPublished();
const checks = published.themes.flatMap(({ checks }) => checks);

describe('figures that somebody else stands for', () => {
  test.each(checks)('$id, $title ($source)', (check) => {
    const rows = judged(check, { book: handbook, sets: published.sets });
    expect(rows.length).toBeGreaterThan(0);
    for (const { what, got, expected, least, most, inside } of rows)
      expect(inside, `${what}: ${got} instead of ${expected}, from ${least} to ${most}`).toBe(true);
  });

  test('are narrow enough to be missed: no tolerance is a fifth of its figure, but for zeros and simulated means', () => {
    for (const check of checks)
      for (const { what, expected, least, most } of judged(check, { book: handbook, sets: published.sets }))
        if (expected !== 0 && !/mean$/.test(what))
          expect((most - least) / 2, `${check.id} ${what}`).toBeLessThan(0.2 * Math.abs(expected));
  });
});

test('a published case is either held against something or left out with a reason', () => {
  const held = new Set(checks.map(({ id }) => id));
  expect(held.size).toBeGreaterThanOrEqual(80);
  for (const [id, reason] of Object.entries(published.notCovered)) {
    expect(held, id).not.toContain(id);
    expect(reason.length, id).toBeGreaterThan(20);
  }
});

test('a figure outside its tolerance is found out', () => {
  const check = checks.find(({ id }) => id === 'DCL-04')!;
  const rows = judged({ ...check, gives: { I_C: '41 A ±0.5 A' }, runs: [] }, { book: handbook, sets: published.sets });
  expect(rows).toMatchObject([{ what: 'I_C', expected: 41, inside: false }]);
});
