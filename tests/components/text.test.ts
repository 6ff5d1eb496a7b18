import { describe, expect, test } from 'vitest';
import { arranged } from '../../src/components/arrange.ts';
import { splitAside } from '../../src/components/aside.ts';
import { digestGroups } from '../../src/components/digest-groups.ts';
import { nameParts, pieces } from '../../src/components/pieces.ts';
import type { Block, Figure } from '../../src/packet/block.ts';

const whole = (text: string) => pieces(text).flatMap((piece) => (piece.whole ? piece.text : []));

describe('pieces of running text', () => {
  test('keep groups of digits together, with two thin spaces', () => {
    expect(whole('of 100\u202f000 boards')).toEqual(['100\u2009\u2009000']);
    expect(whole('1\u2009000\u2009000 boards')).toEqual(['1\u2009\u2009000\u2009\u2009000']);
  });

  test('keep a number with its unit, and names with their number', () => {
    expect(whole('reaches 89.5 °C at −10 °C, by 5.6 %; D-1, REQ-12')).toEqual([
      '89.5 °C',
      '−10 °C',
      '5.6 %',
      'D-1',
      'REQ-12',
    ]);
    expect(whole('1.9 mΩ and 20 kHz')).toEqual(['1.9 mΩ', '20 kHz']);
  });

  test('do not take words for units', () => {
    expect(whole('57 checks, 3 Aces, 4 Hands')).toEqual([]);
  });

  test('lose nothing', () => {
    for (const text of ['', '5 V', 'a 5 V b 7 A', 'no numbers <b>'])
      expect(
        pieces(text)
          .map((piece) => piece.text)
          .join(''),
      ).toBe(text);
  });

  test('a name may break behind its dots and underlines', () => {
    expect(nameParts('bus_sense.V_out')).toEqual(['bus_', 'sense.', 'V_', 'out']);
    expect(nameParts('i_sense.trip_*').join('')).toBe('i_sense.trip_*');
  });
});

describe('arrangement of blocks', () => {
  const paragraph: Block = { kind: 'paragraph', text: [] };
  const note: Block = { kind: 'note', text: [] };
  const half = { kind: 'figure', width: 'half' } as Figure;

  test('a note joins the block that follows it', () => {
    expect(arranged([paragraph, note, note, paragraph])).toEqual([
      { kind: 'noted', notes: [], block: paragraph },
      { kind: 'noted', notes: [note, note], block: paragraph },
    ]);
  });

  test('a note at the end stands alone', () => {
    expect(arranged([note])).toEqual([{ kind: 'noted', notes: [note] }]);
  });

  test('half-width figures share a line, two by two', () => {
    expect(arranged([half, half, half]).map((item) => item.kind === 'halves' && item.figures.length)).toEqual([2, 1]);
  });
});

test('a long list of remarks leaves the margin, the first never', () => {
  const long = ['x'.repeat(400)];
  expect(splitAside([['short'], long, long, ['last']])).toEqual({ margin: [['short'], long], below: [long, ['last']] });
  expect(splitAside([['x'.repeat(2000)], ['y']])).toEqual({ margin: [['x'.repeat(2000)]], below: [['y']] });
  expect(splitAside([['a'], ['b']])).toEqual({ margin: [['a'], ['b']], below: [] });
});

test('a digest is read in eights', () => {
  expect(digestGroups('9c417be205da3f88')).toEqual(['9c41 7be2', '05da 3f88']);
});
