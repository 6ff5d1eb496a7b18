import { describe, expect, test } from 'vitest';
import { blanksIn } from '../../src/safety/blanks.ts';
import { namesIn } from '../../src/safety/names-in.ts';
import { cautionsWith, data, type Known } from './board-with.ts';
import { edges } from './edges.ts';

/** Whatever could be read as leave to do the dangerous thing. */
const PERMISSION =
  /\b(is|are|be|it's) (safe|harmless|fine|ok|okay|allowed|permitted|acceptable)\b|\bsafe(ly)? (to|when|if|at|below|under)\b|\b(you|one|they) may\b|\bmay (be )?(touch|work|open|operate|handl|charg)|\bcan (be )?(safely|touched|ignored|worked)|\bno (need|risk|danger|hazard|harm)\b|\bnot (dangerous|hazardous|harmful|necessary)\b|\bwithout (risk|danger|protection)\b|\bharmless\b|\ballowed to\b|\bfeel free\b|\bnormally not\b|\bshould be fine\b/i;

const sentences = data.cautions.flatMap(({ id, words, ifEndless, ifUnknown }) =>
  [words, ifEndless, ifUnknown].flatMap((one) =>
    Object.entries(one).map(([key, text]) => ({ id, key, text: text as string })),
  ),
);

test.each([
  'It is safe to touch the bus.',
  'Below 60 V it is harmless.',
  'You may work on it.',
  'This voltage is normally not dangerous.',
  'There is no need to wait.',
  'It can be touched at once.',
])('the words test knows permission: %s', (text) => expect(text).toMatch(PERMISSION));

test.each(sentences)('$id $key gives no leave', ({ text }) => {
  expect(text).not.toMatch(PERMISSION);
});

test.each(sentences)('$id $key is one to four sentences, each with its end, and short', ({ key, text }) => {
  expect(text.length).toBeLessThanOrEqual(key === 'text' ? 440 : 260);
  expect(text).toMatch(/^[A-Z0-9{].*\.$/s);
  expect(text).not.toMatch(/ {2}|\n/);
});

const numberOf = (known: Known) => cautionsWith(known);
const complete: Known = Object.assign(
  {},
  ...edges.map(({ given, rows }) => ({ ...given, ...rows.find(([, outcome]) => outcome === 'shown')![0] })),
);

describe.each([
  ['nothing is known', {}],
  ['much is known', complete],
  [
    'there is no bleeder and the slope does not end',
    { ...complete, bleed: 'no', E_slope: 'infinite', V_max: '58.8 V' },
  ],
] as [string, Known][])('where %s', (_, known) => {
  const { shown, considered } = numberOf(known);
  test.each(shown)('$id has every blank filled and no number that is none', ({ text, precaution, reason }) => {
    for (const words of [text, precaution, reason]) {
      expect(blanksIn(words)).toEqual([]);
      expect(words).not.toMatch(/NaN|undefined|null|Infinity|∞|\[object/);
    }
  });
  test('every hazard has a reason', () => {
    for (const { reason } of considered) expect(reason).toMatch(/\S/);
  });
});

test('no caution is generic where its trigger compares a number: the words speak of a number of the board', () => {
  const flagsOnly = data.cautions.filter(
    ({ trigger }) => !trigger || ![...namesIn(trigger)].some((name) => data.quantities.has(name)),
  );
  const wordless = data.cautions.filter(({ words }) => !blanksIn(words.text + words.precaution).length);
  expect(wordless.filter((rule) => !flagsOnly.includes(rule)).map(({ id }) => id)).toEqual([]);
});

describe('nothing in the tables is idle', () => {
  const spoken = new Set(sentences.flatMap(({ text }) => blanksIn(text)));
  const trees = [
    ...data.cautions.flatMap(({ trigger }) => trigger ?? []),
    ...[...data.quantities.values()].flatMap(({ equals, zeroWhen, infiniteWhen }) =>
      [equals, zeroWhen, infiniteWhen].filter((tree) => tree !== undefined),
    ),
  ];
  const used = new Set([
    ...spoken,
    ...namesIn(...trees),
    ...[...data.flags.values()].flatMap(({ provenBy }) => provenBy),
  ]);
  test.each([...data.quantities.values()])('$symbol is used', ({ symbol, tag }) =>
    expect(used.has(symbol) || used.has(tag)).toBe(true),
  );
  test.each([...data.flags.keys()])('%s is used', (flag) => expect(used.has(flag)).toBe(true));
  test.each(Object.keys(data.places))('the place %s is used', (place) =>
    expect(data.cautions.some(({ at }) => at.includes(place))).toBe(true),
  );
  test.each(Object.keys(data.reminders))('the reminder %s is used', (key) =>
    expect(data.cautions.some(({ reminders }) => reminders.includes(key))).toBe(true),
  );
  test.each(Object.keys(data.sources).filter((key) => key !== 'ansi-z535'))('the source %s is used', (key) =>
    expect(data.cautions.some(({ sources }) => sources.some(({ from }) => from === key))).toBe(true),
  );
});

test('danger is kept for what kills or maims, notice for things alone', () => {
  const of = (level: string) => data.cautions.filter((rule) => rule.level === level).map(({ id }) => id);
  expect(of('danger')).toEqual(['S14', 'S38']);
  expect(of('notice')).toEqual(['S44', 'S46']);
});
