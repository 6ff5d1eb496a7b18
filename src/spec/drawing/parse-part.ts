import { TextError } from '../../quantity/text-problem.ts';
import { meant } from '../schema-problems.ts';
import { type DrawnPart, type Place, type Side, sides } from './drawing.ts';
import { type KindName, kindOf, kinds } from './kinds.ts';

interface Word {
  readonly text: string;
  readonly start: number;
}

/**
 * One line of a drawing: what it is, the places of its ends, then in any order symbols, words in quotes, `heavy`, and the side
 * on which the label is wanted.
 * @throws TextError with the word that is wrong
 * @example parsePart('resistor 8,4 8,8 R_top right')
 * // { kind: 'resistor', places: [[8, 4], [8, 8]], symbols: ['R_top'], heavy: false, side: 'right' }
 */
export function parsePart(text: string): DrawnPart {
  const [first, ...rest] = wordsOf(text);
  const kind = readKind(first!);
  const isPlace = ({ text: word }: Word) => /^[-\d]/.test(word);
  const count = rest.findIndex((word) => !isPlace(word));
  const typed = count < 0 ? rest : rest.slice(0, count);
  const places = typed.map(readPlace);
  requirePlaces(kind, places, typed, text);
  const more = rest.slice(typed.length);
  const words = more.find(({ text: word }) => word.startsWith('"'));
  const side = more.find(({ text: word }) => sides.some((one) => one === word));
  return {
    kind,
    places,
    symbols: more.filter((word) => word !== words && word !== side && word.text !== 'heavy').map(readSymbol),
    heavy: kind === 'power' || more.some(({ text: word }) => word === 'heavy'),
    ...(words ? { words: words.text.slice(1, -1) } : {}),
    ...(side ? { side: side.text as Side } : {}),
  };
}

const wordsOf = (text: string): Word[] =>
  [...text.matchAll(/"[^"]*"|\S+/g)].map((match) => ({ text: match[0], start: match.index }));

function readKind(word: Word): KindName {
  if (Object.hasOwn(kinds, word.text)) return word.text as KindName;
  throw problemAt(word, {
    code: 'unknown-drawing-symbol',
    found: `the drawing symbol \`${word.text}\``,
    expected: `one of ${Object.keys(kinds).join(', ')}`,
    ...meant(word.text, Object.keys(kinds)),
  });
}

function readPlace(word: Word): Place {
  const match = /^(-?\d{1,3}),(-?\d{1,3})$/.exec(word.text);
  if (match) return [Number(match[1]), Number(match[2])];
  throw problemAt(word, {
    code: 'not-a-place',
    found: `\`${word.text}\``,
    expected: 'a place of the grid, modules to the right and down, such as `8,4`',
  });
}

function readSymbol(word: Word): string {
  if (/^[A-Za-zα-ωΑ-Ω_][A-Za-z0-9α-ωΑ-Ω_]*$/.test(word.text)) return word.text;
  throw problemAt(word, {
    code: 'not-a-label',
    found: `\`${word.text}\``,
    expected: 'a symbol, words in quotes, `heavy`, or a side such as `left`',
  });
}

function requirePlaces(kind: KindName, places: readonly Place[], typed: readonly Word[], text: string): void {
  const { places: names, many, optional = 0, straight, wrong } = kindOf(kind);
  const whole: Word = { text, start: 0 };
  const least = names.length - optional;
  if (places.length < least || (!many && places.length > names.length))
    throw problemAt(typed.at(-1) ?? whole, {
      code: 'places',
      found: `${places.length} places for a ${kind}`,
      expected: `${many || optional ? 'at least ' : ''}${least}: ${names.join(', ')}`,
    });
  const bent = places.findIndex((place, i) => i > 0 && needsStraight(kind, i) && !aligned(places[i - 1]!, place));
  if (bent > 0)
    throw problemAt(typed[bent]!, {
      code: 'not-straight',
      found: `\`${typed[bent]!.text}\` after \`${typed[bent - 1]!.text}\``,
      expected: 'a place straight above, below, left or right of the one before, and apart from it',
    });
  if (straight && distance(places[0]!, places[1]!) < straight)
    throw problemAt(typed[1]!, {
      code: 'too-short',
      found: `${distance(places[0]!, places[1]!)} modules between the ends of a ${kind}`,
      expected: `${straight} or more`,
    });
  const fault = wrong?.(places);
  if (fault)
    throw problemAt(typed.at(-1)!, {
      code: 'misplaced-end',
      found: fault,
      expected: `${names.join(', ')} in their places`,
    });
}

/** The ends between which a symbol stands lie on one line of the grid, and so do all places of a wire. */
const needsStraight = (kind: KindName, index: number): boolean =>
  kindOf(kind).role === 'line' || (kindOf(kind).straight !== undefined && index === 1);

const aligned = (a: Place, b: Place): boolean => (a[0] === b[0]) !== (a[1] === b[1]);
const distance = (a: Place, b: Place): number => Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]);

function problemAt({ text, start }: Word, what: Omit<TextError['problem'], 'start' | 'end'>): TextError {
  return new TextError({ ...what, start, end: start + text.length });
}
