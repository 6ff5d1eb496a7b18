import { describe, expect, test } from 'vitest';
import { readSafety } from '../../src/safety/read-safety.ts';
import { showProblems } from '../../src/spec/problem.ts';
import { data } from './board-with.ts';

const tables = `quantities:
  E_cap: { says: Energy, unit: J, danger: up, unknown: an unknown energy }
  V_max: { says: Voltage, unit: V, danger: up, unknown: an unknown voltage }
flags: { has_pack: { yes: a pack is joined, no: no pack is joined } }
places: { service: opening }
reminders: { L1: Follow the rules of your place. }
sources: { book: A book }
`;
const caution = (more: Record<string, string> = {}) => {
  const entry: Record<string, string> = {
    level: 'caution',
    hazard: 'Energy',
    trigger: 'E_cap >= 1 J',
    text: 'It holds {E_cap}.',
    precaution: 'Wait.',
    at: '[service]',
    sources: '[ { says: A limit, from: book, known: read } ]',
    reminders: '[L1]',
    ...more,
  };
  return `cautions:\n  S01:\n${Object.entries(entry)
    .map(([key, value]) => `    ${key}: ${value}`)
    .join('\n')}\n`;
};
const read = (...texts: string[]) => readSafety(texts.map((text, i) => ({ file: `${i}.yaml`, text })));
const messages = (...texts: string[]) => showProblems(read(...texts).problems);

test('the tables as shipped are sound', () => {
  expect(data.cautions).toHaveLength(51);
});

test('several files make one set of tables', () => {
  const { data: one, problems } = read(tables, caution());
  expect(problems).toEqual([]);
  expect(one!.cautions.map(({ id }) => id)).toEqual(['S01']);
});

describe('problems are pointed at', () => {
  test('a name in a trigger', () => {
    expect(messages(tables, caution({ trigger: 'E_cup >= 1 J' }))).toBe(`1.yaml:5:14  unknown-name
  cautions.S01.trigger: found the name \`E_cup\`; expected a symbol that is defined.
  4 |     hazard: Energy
  5 |     trigger: E_cup >= 1 J
    |              ^^^^^`);
  });
  test.each([
    ['units that disagree', { trigger: 'E_cap >= 1 V' }, 'units-disagree'],
    [
      'a trigger that compares nothing',
      { trigger: 'E_cap' },
      'wrong-unit\n  cautions.S01.trigger: found `E_cap`, a quantity of energy or torque; expected a comparison or a fact.',
    ],
    [
      'a sum on the left of a comparison',
      { trigger: 'E_cap + E_cap >= 1 J' },
      'not-a-name\n  cautions.S01.trigger: found `E_cap + E_cap` on the left of a comparison; expected a hazard quantity by itself.',
    ],
    [
      'a blank that nothing fills',
      { text: 'It holds {E_cpa}.' },
      'found the blank `{E_cpa}`; expected a hazard quantity.',
    ],
    ['a place', { at: '[servce]' }, 'found `servce`; expected a key of its table.'],
    ['a reminder', { reminders: '[L9]' }, 'found `L9`; expected a key of its table.'],
    ['a source', { sources: '[ { says: A limit, from: bok, known: read } ]' }, 'Did you mean `book`?'],
    [
      'a source without its name',
      { sources: '[ { says: A limit, known: memory } ]' },
      'found a source that was recalled without its name; expected the key `from`.',
    ],
    ['a level', { level: 'grave' }, 'found `grave`; expected one of `danger`, `warning`, `caution`, `notice`.'],
    ['no precaution', { precaution: '""' }, 'missing-value'],
  ])('%s', (_, more, message) => {
    expect(messages(tables, caution(more))).toContain(message);
  });
  test('a caution that stands in two files', () => {
    expect(messages(tables, caution(), caution())).toContain(
      '2.yaml:2:3  stands-twice\n  cautions.S01: found `S01` a second time; expected each once.',
    );
  });
  test('an equation of another kind', () => {
    expect(
      messages(
        'quantities:\n  E: { says: E, unit: J, danger: up, unknown: x, equals: V * 1 A }\n  V: { says: V, unit: V, danger: up, unknown: x }\n',
      ),
    ).toContain('quantities.E.equals: found `V * 1 A`, a quantity of power; expected a quantity of energy or torque.');
  });
  test('equations that go in a circle', () => {
    expect(
      messages(
        'quantities:\n  A: { says: A, unit: V, danger: up, unknown: x, equals: 2 * B }\n  B: { says: B, unit: V, danger: up, unknown: x, equals: A / 2 }\n',
      ),
    ).toContain('found a loop: A → B → A; expected equations that can be worked out one after another.');
  });
  test('a fact that nothing can prove', () => {
    expect(messages('flags: { wet: { yes: it is wet, no: it is dry, yes if given: [V_wet] } }\n')).toContain(
      'found the name `V_wet`; expected a hazard quantity or a fact of the tables.',
    );
  });
});
