import { describe, expect, test } from 'vitest';
import { cautionsWith, data, type Known } from './board-with.ts';
import { edges } from './edges.ts';

const ALWAYS = ['S44', 'S46'];
const outcomeOf = (id: string, known: Known) => cautionsWith(known).considered.find((one) => one.id === id)!;

test('every caution has its edges', () => {
  expect([...edges.map(({ id }) => id), ...ALWAYS].sort()).toEqual(data.cautions.map(({ id }) => id));
});

describe.each(edges)('$id', ({ id, given, rows }) => {
  test('has rows on which it is shown and rows on which it is not', () => {
    expect(new Set(rows.map(([, outcome]) => outcome))).toEqual(new Set(['shown', 'not shown']));
  });
  test.each(rows.map(([more, outcome]) => ({ more, outcome })))('$more: $outcome', ({ more, outcome }) => {
    const found = outcomeOf(id, { ...given, ...more });
    expect({ outcome: found.outcome, open: found.truth === 'unknown' }).toEqual({ outcome, open: false });
  });
  test('is shown, and says why, where nothing is known', () => {
    const found = outcomeOf(id, {});
    expect(found).toMatchObject({ outcome: 'shown', truth: 'unknown' });
    expect(found.reason).toMatch(/^shown because /);
    expect(found.tests.some(({ missing }) => missing.length > 0)).toBe(true);
  });
});

test.each(ALWAYS)('%s is shown whatever is known', (id) => {
  expect(outcomeOf(id, {})).toMatchObject({ outcome: 'shown', truth: 'yes', reason: 'always shown' });
});

describe('silence hides nothing', () => {
  // A quantity that something stands in for is not silent when it is left out.
  const standIns = new Set(
    [...data.quantities.values()].filter((one) => one.assumed || one.default).map(({ symbol }) => symbol),
  );
  test.each(edges)(
    '$id: with any one thing left out of a row on which it is shown it is still shown',
    ({ id, given, rows }) => {
      for (const [more, outcome] of rows) {
        const known = { ...given, ...more };
        if (outcome === 'not shown') continue;
        for (const name of Object.keys(known).filter((one) => !standIns.has(one))) {
          const { [name]: _, ...less } = known;
          expect(outcomeOf(id, less).outcome, `${id} without ${name}`).toBe('shown');
        }
      }
    },
  );
});
